import { describe, expect, it } from 'vitest';
import { countedPeriod, countHits } from '../../../analysis/extremes/counted.ts';
import { estimatedCount } from '../../../analysis/extremes/estimated-count.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';

const random = seededRandom(7);
const valuesC = Float64Array.from({ length: 60 }, () => -4 + 2.5 * random.normal());
const limitC = -6;

describe('the count at a place between stations', () => {
  it('is the plain count where there is no error', () => {
    const error = { meanC: -4, meanErrorC: 0, logScaleError: 0 };
    expect(estimatedCount(valuesC, limitC, error)).toEqual(
      countedPeriod(countHits(valuesC, limitC), valuesC.length),
    );
  });

  it('has a range that holds the plain one and widens with the error', () => {
    let before = countedPeriod(countHits(valuesC, limitC), valuesC.length);
    for (const meanErrorC of [0.2, 0.5, 1, 2]) {
      const counted = estimatedCount(valuesC, limitC, { meanC: -4, meanErrorC, logScaleError: 0.1 });
      expect(counted.period).toBe(before.period);
      expect(counted.low).toBeLessThanOrEqual(before.low);
      expect(counted.high).toBeGreaterThanOrEqual(before.high);
      before = counted;
    }
    expect(before.low).toBeGreaterThanOrEqual(1);
  });

  // Truth: 60 winters of a known normal, whose level is estimated with a known error; common practice: 90 % of 90 % ranges hold it.
  it('holds the true chance about nine times in ten, whichever error is the larger', () => {
    for (const meanErrorC of [0.1, 0.8, 2.5]) {
      let held = 0;
      const trials = 400;
      const chance = 0.2;
      const trueLimit = -4 - 0.8416212335729143 * 2.5;
      for (let trial = 0; trial < trials; trial++) {
        const off = meanErrorC * random.normal();
        const seen = Float64Array.from({ length: 60 }, () => -4 + off + 2.5 * random.normal());
        const { low, high } = estimatedCount(seen, trueLimit, { meanC: -4, meanErrorC, logScaleError: 0 });
        if (1 / chance >= low && 1 / chance <= high) held++;
      }
      expect(held / trials, `error ${meanErrorC}`).toBeGreaterThan(0.85);
      expect(held / trials, `error ${meanErrorC}`).toBeLessThan(0.99);
    }
  });
});
