import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { livesOf } from '../../../../analysis/tree/life/lives-of.ts';
import { readingOf } from '../../../../analysis/tree/life/reading-of.ts';
import { HORIZON_YEARS } from '../../../../analysis/tree/life/tree-years.ts';
import { withRange } from '../../../../analysis/tree/life/with-range.ts';
import { anyMargins, anyTree, notComplete, quiet, raised, withLoss } from './made-margins.ts';

const TREE = {
  reading: 'night_by_night',
  startAgeYears: 1,
  firstCropYear: 3,
  killEnds: { low: -100, high: 150 },
} as const;

const rounded = (share: number | null): number | null => share && Number(share.toFixed(4));
/** Kaplan-Meier estimates to 4 digits of the ages told. */
const watched = (reading: ReturnType<typeof readingOf>, ages: number): (number | null)[] =>
  reading.living.slice(0, ages).map(({ kaplan_meier }) => rounded(kaplan_meier));
/** Shares round the record likewise. */
const shares = (reading: ReturnType<typeof readingOf>, ages: number): (number | null)[] =>
  reading.living.slice(0, ages).map(({ share }) => rounded(share));

describe('shares worked by hand', () => {
  test('one killing winter of five', () => {
    const reading = readingOf(withLoss(quiet(5), 3, 'kill', { margin: 120 }), TREE);
    // At risk 5, 3, 2, 1 and one dies at each age: 4/5, 2/3, 1/2, 0.
    expect(watched(reading, 6)).toEqual([0.8, 0.5333, 0.2667, 0, 0, 0]);
    // Round the five winters each tree meets the fourth once: at ages 4, 3, 2, 1 and, planted after it, 5.
    expect(shares(reading, 6)).toEqual([0.8, 0.6, 0.4, 0.2, 0, 0]);
    expect(reading.living.slice(0, 6).map(({ followed, alive }) => [followed, alive])).toEqual([
      [5, 4],
      [4, 2],
      [3, 1],
      [2, 0],
      [1, 0],
      [0, 0],
    ]);
    expect(reading.median_years).toEqual({ years: 3, low: null, high: null });
    expect(reading.first_crop).toMatchObject({ age: 3, followed: 3, alive: 1, low: null, high: null });
    expect(reading.twenty_years).toMatchObject({ age: 20, share: 0, basis: 'round' });
    // A margin of 1.2 °C is a hit still where the threshold lies 1 °C lower.
    expect(reading.living[0]!.if_threshold).toEqual({ low: 0.8, high: 0.8 });
    expect(reading.crops_in_ten).toBeNull();
  });

  test("the threshold's ends: 1.0 °C hardier, 1.5 °C more tender", () => {
    const spared = readingOf(withLoss(quiet(5), 3, 'kill', { margin: 99 }), TREE);
    expect(spared.living[0]!.if_threshold).toEqual({ low: 1, high: 0.8 });
    const near = readingOf(withLoss(quiet(5), 3, 'kill', { margin: -150 }), TREE);
    expect(near.living[0]).toMatchObject({ share: 1, if_threshold: { low: 1, high: 0.8 } });
    const far = readingOf(withLoss(quiet(5), 3, 'kill', { margin: -151 }), TREE);
    expect(far.living[0]!.if_threshold).toEqual({ low: 1, high: 1 });
  });

  test('killed in a winter that is not complete: out of the count there, no death', () => {
    const reading = readingOf(notComplete(withLoss(quiet(6), 3, 'kill'), 3), TREE);
    // Nobody is watched at the fourth age: unknown from there on. Going round leaves that winter out.
    expect(watched(reading, 5)).toEqual([1, 1, 1, null, null]);
    expect(shares(reading, 5)).toEqual([1, 1, 1, 1, 1]);
    expect(reading.plantings.map(({ fate }) => fate)).toEqual([
      'unknown',
      'unknown',
      'unknown',
      'living',
      'living',
    ]);
    expect(reading.living[1]).toMatchObject({ followed: 4, alive: 3 });
  });

  test('a winter that is not complete: through it, but not at risk in it', () => {
    const reading = readingOf(notComplete(withLoss(quiet(5), 4, 'kill'), 2), TREE);
    // At risk 4, 2, 1, 2, 1; deaths 1, 1, 0, 1, 1.
    expect(watched(reading, 6)).toEqual([0.75, 0.375, 0.375, 0.1875, 0, 0]);
    expect(shares(reading, 5)).toEqual([0.75, 0.5, 0.25, 0, 0]);
  });

  test('older than the record: the winters come round again', () => {
    const reading = readingOf(withLoss(quiet(12), 0, 'kill'), TREE);
    expect(reading.living[11]).toMatchObject({ basis: 'record', followed: 1, alive: 0 });
    expect(reading.living[12]).toMatchObject({ basis: 'round', followed: 0, kaplan_meier: null });
    // As the record runs only the tree planted first dies; going round, each of the others meets that winter too.
    expect(watched(reading, 11)).toEqual(new Array(11).fill(0.9167));
    expect(shares(reading, 13)).toEqual(
      Array.from({ length: 13 }, (_, a) => rounded(Math.max(0, 11 - a) / 12)),
    );
    const flat = new Float64Array(HORIZON_YEARS).fill(0.7);
    const whole = withRange(reading, { low: flat, high: flat, medianLow: 5, medianHigh: Infinity });
    expect(whole.living[0]).toMatchObject({ low: 0.7, high: 11 / 12 });
    expect(whole.living[8]).toMatchObject({ low: 3 / 12, high: 0.7 });
    expect(whole.median_years).toEqual({ years: 6, low: 5, high: null });
  });
});

describe('crops', () => {
  test('in ten winters, of plantings whose ten winters are all known', () => {
    // Planted at 0: winters 0-9; at 1: 1-10; at 2: 2-11. Fruit is lost in winter 10, bloom is hit in winter 5.
    const made = withLoss(withLoss(quiet(12), 10, 'fruit'), 5, 'flush');
    const reading = readingOf(made, TREE);
    expect(reading.crops_in_ten).toEqual({ plantings: 3, median: 7, worst_tenth: 7 });
    expect(reading.crops_in_ten_with_bloom).toEqual({ plantings: 3, median: 6, worst_tenth: 6 });
    // A crop is carried by plantings 0-9 in 10 - age 2 ... : sum of winters from the third on.
    const carried = Array.from({ length: 12 }, (_, start) => Math.max(0, 12 - start - 2)).reduce(
      (a, b) => a + b,
    );
    expect(reading.crops_lost_in_ten).toBeCloseTo((10 * 9) / carried, 12);
    expect(readingOf(notComplete(made, 4), TREE).crops_in_ten).toBeNull();
    expect(readingOf(notComplete(made, 0), TREE).crops_in_ten).toMatchObject({ plantings: 2 });
  });

  test('a killed tree picks no more, and counts', () => {
    const made = withLoss(quiet(20), 9, 'kill');
    const { crops_in_ten: crops } = readingOf(made, TREE);
    // Eleven plantings: those before winters 0-9 picked 8, 7, 6, 5, 4, 3, 2, 1, 0, 0 (the last crop was in before the kill), the one after it 8.
    expect(crops).toEqual({ plantings: 11, median: 4, worst_tenth: 0 });
  });

  test('none carried, none lost', () => {
    expect(readingOf(quiet(2), TREE).crops_lost_in_ten).toBeNull();
    expect(readingOf(quiet(3), TREE).crops_lost_in_ten).toBe(0);
    // Planted before the first of four winters: a leaf lost in the third costs the fourth's crop; the second has its first crop in the fourth.
    expect(readingOf(withLoss(quiet(4), 2, 'leaf'), TREE).crops_lost_in_ten).toBeCloseTo(20 / 3, 12);
  });
});

test('nights covered: mean over winters of living trees, and the worst', () => {
  const made = withLoss(quiet(3), 1, 'kill');
  const nightsToCover = Int16Array.from([2, 7, 1].flatMap((count) => Array<number>(8).fill(count)));
  // Planted before 0: 2 + 7; before 1: 7; before 2: 1.
  expect(readingOf(made, { ...TREE, nightsToCover }).nights_covered).toEqual({ mean: 17 / 4, worst: 7 });
  expect(readingOf(made, TREE).nights_covered).toBeNull();
});

test('no complete winter: nothing is told', () => {
  const reading = readingOf(notComplete(quiet(2), 0, 1), TREE);
  expect(reading.plantings).toEqual([]);
  expect(reading.living[0]).toMatchObject({ followed: 0, alive: 0, share: null, basis: 'round' });
});

describe('properties', () => {
  const whole = anyMargins.map((made) => ({ ...made, complete: made.complete.map(() => 1) }));

  test('of plantings followed that far, as many live as their courses say', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, (made, tree) => {
        const { living, plantings } = readingOf(made, { ...TREE, ...tree });
        const end = made.winter.at(-1)!;
        for (const { age, followed, alive } of living) {
          const reaching = plantings.filter(({ winter }) => winter + age - 1 <= end);
          expect(followed).toBe(reaching.length);
          expect(alive).toBe(reaching.filter(({ years }) => years >= age).length);
        }
      }),
    );
  });

  test('more penalty or a more tender threshold: never more living, nor a larger share', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, fc.integer(), (made, tree, seed) => {
        const q = { ...TREE, ...tree };
        const after = readingOf(raised(made, 0.3, seed), q).living;
        readingOf(made, q).living.forEach(({ alive, share }, i) => {
          expect(after[i]!.alive).toBeLessThanOrEqual(alive);
          if (share !== null) expect(after[i]!.share!).toBeLessThanOrEqual(share);
        });
      }),
    );
  });

  test('a first crop before the tenth year is reached by no fewer than ten years are', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, (made, tree) => {
        const { first_crop: first, ten_years: ten } = readingOf(made, { ...TREE, ...tree });
        expect(first.age).toBeLessThanOrEqual(10);
        if (ten.share !== null) expect(first.share!).toBeGreaterThanOrEqual(ten.share);
      }),
    );
  });

  test('a threshold at its centre is the reading itself', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, (made, tree) => {
        const reading = readingOf(made, { ...tree, killEnds: { low: 0, high: 0 } });
        for (const { share, if_threshold } of reading.living) {
          expect(if_threshold).toEqual({ low: share, high: share });
        }
      }),
    );
  });

  test('the worst tenth has no more crops than the median, and neither more than ten', () => {
    fc.assert(
      fc.property(whole, anyTree, (made, tree) => {
        const { crops_in_ten: crops, crops_in_ten_with_bloom: bloom } = readingOf(made, { ...TREE, ...tree });
        expect(crops?.plantings ?? 0).toBe(Math.max(0, made.winter.length - 9));
        if (!crops || !bloom) return;
        expect(crops.worst_tenth).toBeLessThanOrEqual(crops.median);
        expect(crops.median).toBeLessThanOrEqual(10);
        expect(bloom.median).toBeLessThanOrEqual(crops.median);
        const atMost = livesOf(made, tree).lives.filter(
          ({ start, cropsInTen }) => start + 10 <= made.winter.length && cropsInTen <= crops.worst_tenth,
        );
        expect(atMost.length).toBeGreaterThanOrEqual(crops.plantings / 10);
      }),
    );
  });
});
