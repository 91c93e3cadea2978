import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circularBlocks } from '../../../analysis/extremes/block-resample.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import reference from '../../reference/life/boot.json' with { type: 'json' };

const mean = (x: readonly number[]): number => x.reduce((sum, v) => sum + v, 0) / x.length;
const spread = (x: readonly number[]): number => {
  const centre = mean(x);
  return Math.sqrt(x.reduce((sum, v) => sum + (v - centre) ** 2, 0) / (x.length - 1));
};
/** Lag 1, as R's `acf`. */
const serial = (x: readonly number[]): number => {
  const centre = mean(x);
  const about = x.map((v) => v - centre);
  const products = about.slice(1).map((v, i) => v * about[i]!);
  return products.reduce((s, v) => s + v, 0) / about.reduce((s, v) => s + v * v, 0);
};

/** Blocks of an index array: each but the last `block` long, and going on by one round the end. */
function expectBlocks(indices: readonly number[], block: number, length: number): void {
  indices.forEach((index, i) => {
    expect(index).toBeGreaterThanOrEqual(0);
    expect(index).toBeLessThan(length);
    if (i % block > 0) expect(index).toBe((indices[i - 1]! + 1) % length);
  });
}

const { made_by: _made_by, ...cases } = reference;

describe.each(Object.entries(cases))(
  "against R's boot package (tests/reference/life/boot.R): %s",
  (_name, q) => {
    const { series, block, indices, statistics, many } = q;
    const random = seededRandom(20);
    const pick = (from: readonly number[]): number[] => from.map((i) => series[i]!);

    test("R's own draws are blocks as ours are, and give R's statistics", () => {
      indices.forEach((drawn, r) => {
        const fromZero = drawn.map((i) => i - 1);
        expectBlocks(fromZero, block, series.length);
        const values = pick(fromZero);
        [mean(values), spread(values), serial(values)].forEach((value, s) => {
          expect(value).toBeCloseTo(statistics[r]![s]!, 8);
        });
      });
    });

    test('the spread of a mean and of a spread over many draws is that of R, within Monte Carlo error', () => {
      const draws = 20_000;
      const means: number[] = [];
      const spreads: number[] = [];
      for (let r = 0; r < draws; r++) {
        const values = pick([...circularBlocks(series.length, block, random)]);
        means.push(mean(values));
        spreads.push(spread(values));
      }
      // A standard deviation from 20,000 draws is known to 1/sqrt(2 * 20,000) = 0.5 %; two of them differ by 0.7 %.
      expect(Math.abs(spread(means) / many.sd_of_mean - 1)).toBeLessThan(0.03);
      expect(Math.abs(spread(spreads) / many.sd_of_sd - 1)).toBeLessThan(0.03);
      expect(Math.abs(mean(means) - many.mean_of_mean)).toBeLessThan(
        (5 * many.sd_of_mean) / Math.sqrt(draws),
      );
      // And the plain bootstrap would be told from it.
      const plain = Array.from({ length: 4000 }, () =>
        mean(pick([...circularBlocks(series.length, 1, random)])),
      );
      expect(Math.abs(spread(plain) / many.sd_of_mean - 1)).toBeGreaterThan(0.1);
    });

    test('the spread of a mean is the exact one: blocks are independent and alike', () => {
      expect(series.length % block).toBe(0);
      const blockMeans = series.map((_, start) =>
        mean(Array.from({ length: block }, (_, i) => series[(start + i) % series.length]!)),
      );
      const variance = mean(blockMeans.map((m) => (m - mean(series)) ** 2)) / (series.length / block);
      expect(Math.abs(many.sd_of_mean / Math.sqrt(variance) - 1)).toBeLessThan(0.02);
    });
  },
);

describe('properties', () => {
  test('blocks run on round the end, the last one cut', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer(),
        (length, b, seed) => {
          const block = Math.min(b, length);
          const drawn = [...circularBlocks(length, block, seededRandom(seed))];
          expect(drawn).toHaveLength(length);
          expectBlocks(drawn, block, length);
        },
      ),
    );
  });

  test('every place is as likely as any other', () => {
    const random = seededRandom(3);
    const seen = new Int32Array(10);
    for (let r = 0; r < 4000; r++) for (const i of circularBlocks(10, 3, random)) seen[i]!++;
    // Counts vary by at most sqrt(3 * 4000) or so about 4000.
    for (const count of seen) expect(Math.abs(count - 4000)).toBeLessThan(500);
  });

  test('the same seed draws the same', () => {
    expect(circularBlocks(60, 4, seededRandom(9))).toEqual(circularBlocks(60, 4, seededRandom(9)));
  });
});

test('a block must fit the series', () => {
  expect(() => circularBlocks(3, 4, seededRandom(1))).toThrow('1 to 3 winters, not 4');
  expect(() => circularBlocks(3, 0, seededRandom(1))).toThrow(RangeError);
  expect([...circularBlocks(1, 1, seededRandom(1))]).toEqual([0]);
});
