import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatIsoDay } from '../../../analysis/units/calendar.ts';
import {
  axisDay,
  axisMonths,
  extentOf,
  piecesOf,
  placeWords,
  type StripRow,
} from '../../../web/charts/year-strip.ts';

const ROW: StripRow = {
  key: 'row',
  label: 'Row',
  detail: '',
  starts: false,
  bars: [],
  reach: null,
  under: [],
  days: [],
  before: '',
  after: '',
  words: '',
};
/** Every date of a year with a 29 February. */
const anyDate = fc.integer({ min: 0, max: 365 }).map((day) => formatIsoDay(10_957 + day).slice(5));
const anyHemisphere = fc.constantFrom('north' as const, 'south' as const);

describe('the axis of a year', () => {
  it('runs from July in the north and from January in the south, whole and without gaps', () => {
    for (const [hemisphere, first] of [
      ['north', 7],
      ['south', 1],
    ] as const) {
      const months = axisMonths(hemisphere);
      expect(months[0]).toMatchObject({ month: first, start: 0 });
      expect(months.map(({ month }) => month).sort((a, b) => a - b)).toEqual([
        1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
      ]);
      expect(months.reduce((sum, { days }) => sum + days, 0)).toBe(366);
      expect(months.find(({ month }) => month === 2)!.days).toBe(29);
    }
  });

  it('splits a span only at the end of the axis, and keeps its days', () => {
    expect(piecesOf('11-01', '03-31', 'north')).toHaveLength(1);
    expect(piecesOf('11-01', '03-31', 'south')).toHaveLength(2);
    fc.assert(
      fc.property(anyDate, anyDate, anyHemisphere, (from, to, hemisphere) => {
        const days = piecesOf(from, to, hemisphere).reduce((sum, { start, end }) => sum + end - start, 0);
        const apart = axisDay(to, hemisphere) - axisDay(from, hemisphere);
        expect(days).toBe((apart < 0 ? apart + 366 : apart) + 1);
      }),
    );
  });

  it('lets the reach count for the words only where there is nothing else', () => {
    const reach = { from: '11-01', to: '04-01' };
    const start = axisDay('12-01', 'north');
    const row = { ...ROW, reach, bars: [{ from: '12-01', to: '12-31', look: 2 as const }] };
    expect(extentOf(row, 'north')).toEqual({ start, end: start + 31 });
    expect(extentOf({ ...ROW, reach }, 'north')!.start).toBe(axisDay('11-01', 'north'));
    expect(extentOf(ROW, 'north')).toBeNull();
  });

  it('starts after it ends where a bar goes over the end of the axis', () => {
    const row = { ...ROW, bars: [{ from: '03-24', to: '08-15', look: 'record' as const }] };
    expect(extentOf(row, 'north')).toEqual({
      start: axisDay('03-24', 'north'),
      end: axisDay('08-15', 'north') + 1,
    });
    expect(extentOf(row, 'south')!.start).toBeLessThan(extentOf(row, 'south')!.end);
  });
});

describe('words beside the marks', () => {
  const widthOf = (text: string): number => text.length * 6;

  it('stand on both sides where they fit, else together where the room is', () => {
    const row = { before: '14 Nov', after: '24 Mar' };
    expect(placeWords(row, [200, 300], [0, 500], widthOf).map(({ anchor }) => anchor)).toEqual([
      'end',
      'start',
    ]);
    expect(placeWords(row, [10, 300], [0, 500], widthOf)).toEqual([
      { text: '14 Nov to 24 Mar', x: 306, anchor: 'start' },
    ]);
    expect(placeWords(row, null, [0, 500], widthOf)).toEqual([
      { text: '14 Nov to 24 Mar', x: 250, anchor: 'middle' },
    ]);
  });

  it('stand between the pieces of a bar that goes over the end of the axis', () => {
    expect(placeWords({ before: '', after: '24 Mar to 15 Aug' }, [260, 60], [0, 340], widthOf)).toEqual([
      { text: '24 Mar to 15 Aug', x: 254, anchor: 'end' },
    ]);
  });

  it('never leave the axis they are given', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 339 }),
        fc.integer({ min: -340, max: 340 }),
        fc.constantFrom('', '14 Nov'),
        fc.constantFrom('', '24 Mar', '31 Dec, pick by 2 Dec'),
        (start, length, before, after) => {
          const end = Math.max(0, Math.min(340, start + length));
          for (const { text, x, anchor } of placeWords({ before, after }, [start, end], [0, 340], widthOf)) {
            const left = anchor === 'end' ? x - widthOf(text) : x;
            expect(left).toBeGreaterThanOrEqual(0);
            expect(left + widthOf(text)).toBeLessThanOrEqual(340);
          }
        },
      ),
    );
  });
});
