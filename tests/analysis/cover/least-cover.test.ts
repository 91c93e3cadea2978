import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combinations, gainsAsMuch } from '../../../analysis/cover/combinations.ts';
import { coverGains } from '../../../analysis/cover/cover-gains.ts';
import { MEASURE_IDS } from '../../../analysis/cover/cover-ids.ts';
import { leastCover } from '../../../analysis/cover/least-cover.ts';
import { refusals } from '../../../analysis/cover/refusals.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import type { LevelGainSpreads } from '../../../analysis/tree/level-gains.ts';

const EVERYTHING = [...MEASURE_IDS, 'tied', 'lights-confirmed'];
const leafPeriod = ({ leaf }: LevelGainSpreads): number =>
  2 * Math.exp(leaf.calm.centreC / 2 + leaf.windy.centreC / 4);

describe('combinations', () => {
  it('begin with nothing, rise in effort, are allowed, and none is equalled by an easier one', () => {
    const all = combinations(EVERYTHING);
    expect(all[0].ids).toEqual([]);
    all.forEach((one, i) => {
      expect(refusals(one.ids)).toEqual([]);
      expect(one.gains).toEqual(coverGains(one.ids));
      for (const easier of all.slice(0, i)) {
        expect(easier.effort.rank).toBeLessThanOrEqual(one.effort.rank);
        expect(gainsAsMuch(easier.gains, one.gains)).toBe(false);
      }
    });
  });

  it('use a condition only when it is a candidate', () => {
    expect(combinations(['cloth-heavy', 'lights']).map(({ ids }) => ids)).toEqual([[], ['cloth-heavy']]);
    const tied = combinations(['cloth-heavy', 'tied']).map(({ ids }) => ids);
    expect(tied).toEqual([[], ['cloth-heavy'], ['cloth-heavy', 'tied']]);
  });

  it('leave banks and wraps out where the graft is not asked for', () => {
    const ids = combinations(['soil-bank', 'trunk-wrap', 'cloth-light'], ['leaf']).map((one) => one.ids);
    expect(ids).toEqual([[], ['cloth-light']]);
  });
});

describe('least cover', () => {
  it('is no cover where none is needed', () => {
    const answer = leastCover(EVERYTHING, () => 50, { onceIn: 10 });
    expect(answer.least?.ids).toEqual([]);
    expect(answer.tried).toBe(1);
  });

  it('is the easiest that does, as trying every combination finds', () => {
    for (const onceIn of [3, 5, 8, 12]) {
      const wish = { onceIn, levels: ['leaf'] as const };
      const { least } = leastCover(EVERYTHING, leafPeriod, wish);
      const sufficient = combinations(EVERYTHING).filter(({ gains }) => leafPeriod(gains) > onceIn);
      expect(least!.effort.rank).toBe(Math.min(...sufficient.map(({ effort }) => effort.rank)));
      expect(least!.periodWinters).toBeGreaterThan(onceIn);
    }
  });

  it('gives the best there is when nothing reaches', () => {
    const answer = leastCover(['cloth-light', 'watered-soil'], leafPeriod, { onceIn: 1000 });
    expect(answer.least).toBeNull();
    expect([...answer.best.ids].sort()).toEqual(['cloth-light', 'watered-soil']);
    expect(answer.monotone).toBe(true);
  });

  it('must make it rarer than asked, not just as rare', () => {
    expect(leastCover([], () => 10, { onceIn: 10 }).least).toBeNull();
    expect(leastCover([], () => 10, { onceIn: 9.9 }).least?.ids).toEqual([]);
  });

  it('notices a period that falls with more cover', () => {
    const falling = ({ leaf }: LevelGainSpreads): number => 10 - leaf.calm.centreC;
    expect(leastCover(EVERYTHING, falling, { onceIn: 1000 }).monotone).toBe(false);
  });

  it('never grows easier as the wish grows', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.subarray(EVERYTHING),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (candidates, onceIn) => {
          const easy = leastCover(candidates, leafPeriod, { onceIn, levels: ['leaf'] });
          const hard = leastCover(candidates, leafPeriod, { onceIn: onceIn * 1.5, levels: ['leaf'] });
          if (hard.least) {
            compared++;
            expect(easy.least!.effort.rank).toBeLessThanOrEqual(hard.least.effort.rank);
          }
          expect(easy.monotone && hard.monotone).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(5);
  });

  it('refuses unknown candidates and wishes that are none', () => {
    expect(() => leastCover(['foil'], leafPeriod, { onceIn: 10 })).toThrow(InputError);
    expect(() => leastCover([], leafPeriod, { onceIn: 0 })).toThrow(RangeError);
  });
});
