import { describe, expect, it } from 'vitest';
import type { TypeYear, YearAnswer } from '../../../../analysis/answer/year.ts';
import { stripRows } from '../../../../web/views/year/strip-rows.ts';
import { chances, madeDates, madeHarvest, madeTask, plain } from './made-year.ts';

const TYPE: TypeYear = {
  id: 'made',
  name: 'Made mandarin',
  levels: [
    { level: 'fruit', dates: madeDates() },
    { level: 'leaf', dates: madeDates({ first: chances([]), last: chances([]), share_without: 0.95 }) },
    {
      level: 'kill',
      dates: madeDates({
        first: chances([]),
        last: chances([]),
        earliest: null,
        latest: null,
        share_without: 1,
      }),
    },
  ],
  picking_saves: null,
  harvest: madeHarvest(),
  tasks: [
    madeTask({ id: 'prune', title: 'Prune', from: '03-24', to: '06-30', basis: 'practice' }),
    madeTask(),
    madeTask({ id: 'harvest', from: '11-01', to: '12-31' }),
    madeTask({ id: 'pick-by', from: '12-04' }),
  ],
  early_late: { before: '12-01', share_before: 0, after: '02-15', share_after: 0.1 },
};
const ANSWER: YearAnswer = {
  calendar: 'gulf',
  hemisphere: 'north',
  winters: 40,
  left_out: [],
  freezes: [
    madeDates({
      limit_c: 0,
      hours: 0,
      share_without: 0,
      first: chances(['11-14', '11-24', '12-05', '12-17', '12-28']),
      last: chances(['03-24', '03-14', '03-02', '02-19', '02-07']),
    }),
  ],
  types: [TYPE],
  notes: [],
};

describe('rows of the year', () => {
  const rows = stripRows(ANSWER, TYPE, 'F', false);
  const row = (key: string) => rows.find((entry) => entry.key === key)!;

  it('come as freezes, levels, picking, then work in the order of the year', () => {
    expect(rows.map(({ label }) => plain(label))).toEqual([
      '32 °F',
      'Fruit',
      'Leaf',
      'Life',
      'Picking',
      'Covers ready',
      'Routine pruning',
    ]);
  });

  it('shade a freeze season by chance, the likelier within the less likely', () => {
    const { bars } = row('freeze 0');
    expect(bars.map(({ look }) => look)).toEqual([2, 3, 4, 5, 6]);
    expect(bars[0]).toMatchObject({ from: '11-14', to: '03-24' });
    expect(bars[4]).toMatchObject({ from: '12-28', to: '02-07' });
    expect(row('freeze 0').under).toEqual([
      { from: '11-14', to: '12-01' },
      { from: '02-15', to: '03-24' },
    ]);
  });

  it('say how often where a level came in fewer than 1 winter in 10, or that it never did', () => {
    expect(plain(row('leaf').after)).toBe('2 Mar, in 2 of 40');
    expect(row('leaf').bars).toEqual([]);
    expect(row('kill')).toMatchObject({ bars: [], reach: null, after: 'none on record' });
  });

  it('mark the day to pick by within the harvest, and work by whose word its dates are', () => {
    expect(row('harvest').days).toEqual([{ date: '12-04', look: 'record' }]);
    expect(plain(row('harvest').after)).toBe('31 Dec, pick by 4 Dec');
    expect(row('harvest').bars.map(({ look }) => look)).toEqual([0, 1, 2, 3, 'window']);
    expect(rows.at(-1)!.bars).toEqual([{ from: '03-24', to: '06-30', look: 'practice' }]);
    expect(rows.at(-1)!.words).toContain('common practice, no source');
    expect(plain(rows.at(-2)!.after)).toBe('by 27 Nov');
    // Half of the nights that hurt may come before the day that 1 winter in 10 goes by.
    const early = stripRows(ANSWER, { ...TYPE, tasks: [madeTask({ earliest: '11-03' })] }, 'F', false);
    expect(plain(early.at(-1)!.after)).toBe('by 27 Nov; earliest 3 Nov');
  });

  it('don’t give the ends of a harvest that goes on all winter as dates of picking', () => {
    const lemon = { ...TYPE, harvest: madeHarvest({ always_exposed: true, pick_by: null }) };
    const harvest = stripRows(ANSWER, lemon, 'F', false).find(({ key }) => key === 'harvest')!;
    expect([harvest.before, harvest.after]).toEqual(['', '']);
  });
});
