import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../analysis/math/seeded-random.ts';
import { quantileType7 } from '../../../../analysis/math/quantile.ts';
import { MISSING_HUNDREDTHS } from '../../../../analysis/records/nights.ts';
import { lifeRanges, type LifeRange, type RangedTree } from '../../../../analysis/tree/life/life-ranges.ts';
import { livesOf } from '../../../../analysis/tree/life/lives-of.ts';
import { readingOf } from '../../../../analysis/tree/life/reading-of.ts';
import { makeRings, type Rings } from '../../../../analysis/tree/life/rings.ts';
import { HORIZON_YEARS } from '../../../../analysis/tree/life/tree-years.ts';
import { withRange } from '../../../../analysis/tree/life/with-range.ts';
import { MARGINS_A_WINTER, type WinterMargins } from '../../../../analysis/tree/winter-margins.ts';
import beta from '../../../reference/life/beta.json' with { type: 'json' };
import kept from '../../../reference/life/coverage.json' with { type: 'json' };
import { coverageOf } from '../../../reference/life/coverage.ts';
import { anyMargins, anyTree, notComplete, quiet, raised, withLoss } from './made-margins.ts';

const NO_ENDS = { low: 0, high: 0 };
const TREE = { reading: 'hardened', startAgeYears: 1, firstCropYear: 3 } as const;

function rangesOf(rings: Rings, trees: readonly RangedTree[], step?: number): LifeRange[] {
  const steps = lifeRanges(rings, trees, step);
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}

const oneRange = (rings: Rings, tree: RangedTree): LifeRange => rangesOf(rings, [tree])[0]!;

describe('rings', () => {
  test("chances of an unseen winter have Jeffreys' quantiles of 0 in n (R's qbeta, tests/reference/life/beta.R)", () => {
    for (const { n, quantiles } of beta.rows) {
      const { complete } = quiet(n);
      const { unseen } = makeRings({ complete, random: seededRandom(n), draws: 4000 });
      expect(quantileType7(unseen, 0.5) / quantiles['0.5']).toBeCloseTo(1, 1);
      expect(Math.abs(quantileType7(unseen, 0.95) / quantiles['0.95'] - 1)).toBeLessThan(0.05);
      expect(Math.abs(quantileType7(unseen, 0.05) / quantiles['0.05'] - 1)).toBeLessThan(0.1);
    }
  });

  test('only complete winters, in blocks that run over the gaps between them', () => {
    const { complete } = notComplete(quiet(20), 3, 4, 11);
    const positions = [...complete.keys()].filter((j) => complete[j]);
    const { winter, length, draws, colder } = makeRings({ complete, random: seededRandom(1), block: 4 });
    expect([length, draws, colder]).toEqual([17, 200, null]);
    expect(winter).toHaveLength(17 * 200);
    winter.forEach((j, i) => {
      const at = positions.indexOf(j);
      expect(at).toBeGreaterThanOrEqual(0);
      const inRing = i % length;
      if (inRing % 4 > 0) expect(at).toBe((positions.indexOf(winter[i - 1]!) + 1) % 17);
    });
  });

  test('a place without a station: one error of the mean and one of the scale a ring, turned about the mean', () => {
    const { complete } = quiet(40);
    const coldestC = Float64Array.from({ length: 40 }, (_, j) => -10 + (j % 9));
    coldestC[7] = NaN;
    const error = { meanC: -6, meanErrorC: 1.2, logScaleError: 0.15, correlation: -0.4 };
    const { colder, winter, length, draws } = makeRings({
      complete,
      random: seededRandom(5),
      draws: 3000,
      place: { error, coldestC },
    });
    // Two kinds of winter tell both errors of a ring; every other winter must agree with them.
    const means: number[] = [];
    const logs: number[] = [];
    for (let b = 0; b < draws; b++) {
      const byValue = new Map<number, number>();
      for (let i = b * length; i < (b + 1) * length; i++)
        byValue.set(coldestC[winter[i]!]!, -colder![i]! / 100);
      const known = [...byValue].filter(([value]) => !Number.isNaN(value));
      const [cold, shiftCold] = known.reduce((a, b) => (b[0] < a[0] ? b : a));
      const [mild, shiftMild] = known.reduce((a, b) => (b[0] > a[0] ? b : a));
      const slope = (shiftMild - shiftCold) / (mild - cold);
      const mean = shiftCold + slope * (-6 - cold);
      for (const [value, shift] of known)
        expect(Math.abs(mean + slope * (value + 6) - shift)).toBeLessThan(0.03);
      means.push(mean);
      logs.push(Math.log1p(slope));
    }
    const about = (x: number[]): number => x.reduce((s, v) => s + v, 0) / x.length;
    const spread = (x: number[]): number => Math.sqrt(about(x.map((v) => v ** 2)));
    expect(Math.abs(about(means))).toBeLessThan(0.1);
    expect(spread(means)).toBeCloseTo(1.2, 1);
    expect(spread(logs)).toBeCloseTo(0.15, 1);
    const correlation = about(means.map((m, i) => m * logs[i]!)) / (1.2 * 0.15);
    expect(Math.abs(correlation + 0.4)).toBeLessThan(0.06);
  });

  test('the same seed makes the same rings; no complete winter makes none', () => {
    const { complete } = quiet(30);
    expect(makeRings({ complete, random: seededRandom(2) })).toEqual(
      makeRings({ complete, random: seededRandom(2) }),
    );
    expect(makeRings({ complete: quiet(1).complete, random: seededRandom(2) }).length).toBe(1);
    expect(() => makeRings({ complete: new Uint8Array(3), random: seededRandom(2) })).toThrow(
      '1 complete winter',
    );
  });
});

/** A ring written out as winters of its own, once round and on to the oldest age. */
function written({ winter, colder, length }: Rings, made: WinterMargins): WinterMargins {
  const count = length + HORIZON_YEARS;
  const out = quiet(count);
  for (let i = 0; i < count; i++)
    for (let m = 0; m < MARGINS_A_WINTER; m++) {
      const margin = made.margins[winter[i % length]! * MARGINS_A_WINTER + m]!;
      out.margins[i * MARGINS_A_WINTER + m] =
        margin === MISSING_HUNDREDTHS ? margin : margin + (colder ? colder[i % length]! : 0);
    }
  return out;
}

describe('ranges', () => {
  const anyPlace = fc.option(
    fc.constant({
      error: { meanC: -6, meanErrorC: 1, logScaleError: 0.1 },
      coldestC: new Float64Array(50).fill(-8),
    }),
  );

  test('one draw is what trees planted in the written-out ring do, less the unseen winters', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, anyPlace, fc.integer(), (made, tree, place, seed) => {
        const rings = makeRings({ complete: made.complete, random: seededRandom(seed), draws: 1, place });
        const { low, high } = oneRange(rings, { ...tree, margins: made });
        const lives = livesOf(written(rings, made), tree).lives.slice(0, rings.length);
        for (let age = 1; age <= HORIZON_YEARS; age++) {
          const alive = lives.filter(({ years }) => years >= age).length / rings.length;
          expect(low[age - 1]).toBeCloseTo(alive * (1 - rings.unseen[0]!) ** age, 12);
          expect(high[age - 1]).toBe(low[age - 1]);
        }
      }),
    );
  });

  test('no hit on record: never certain, and bounded by the number of winters', () => {
    for (const { n, quantiles } of beta.rows) {
      const made = quiet(n);
      const rings = makeRings({ complete: made.complete, random: seededRandom(n) });
      const range = oneRange(rings, { ...TREE, margins: made });
      const reading = withRange(readingOf(made, { ...TREE, killEnds: NO_ENDS }), range);
      for (const { age, share, low } of reading.living) {
        const bound = (1 - quantiles['0.95']) ** age;
        expect(share).toBe(1);
        expect(low).toBeLessThan(1);
        // 200 draws, one of whose two gamma variables is drawn at random: within a tenth of the bound's own doubt.
        expect(Math.abs(Math.log(low!) / Math.log(bound) - 1)).toBeLessThan(0.12);
        expect(range.high[age - 1]).toBeLessThan(1);
      }
      expect(reading.twenty_years.low).toBeLessThan(reading.ten_years.low!);
    }
  });

  test('margins raised anywhere never raise either end', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, fc.integer(), (made, tree, seed) => {
        const rings = makeRings({ complete: made.complete, random: seededRandom(seed), draws: 20 });
        const [before, after] = rangesOf(rings, [
          { ...tree, margins: made },
          { ...tree, margins: raised(made, 0.2, seed) },
        ]);
        for (let a = 0; a < HORIZON_YEARS; a++) {
          expect(after!.low[a]).toBeLessThanOrEqual(before!.low[a]!);
          expect(after!.high[a]).toBeLessThanOrEqual(before!.high[a]!);
        }
        expect(after!.medianLow).toBeLessThanOrEqual(before!.medianLow);
        expect(after!.medianHigh).toBeLessThanOrEqual(before!.medianHigh);
      }),
      { numRuns: 60 },
    );
  });

  test('with its range a reading is whole: shares fall with age, within their ends', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, fc.integer(), (made, tree, seed) => {
        const rings = makeRings({ complete: made.complete, random: seededRandom(seed), draws: 20 });
        const told = readingOf(made, { ...tree, killEnds: NO_ENDS });
        const whole = withRange(told, oneRange(rings, { ...tree, margins: made }));
        let before = { share: 1, low: 1, high: 1 };
        whole.living.forEach(({ share, low, high, basis }, i) => {
          expect(low).toBeLessThanOrEqual(share!);
          expect(share).toBeLessThanOrEqual(high!);
          expect(share).toBeLessThanOrEqual(before.share + 1e-12);
          expect(low).toBeLessThanOrEqual(before.low + 1e-12);
          expect(high).toBeLessThanOrEqual(before.high + 1e-12);
          expect(basis === 'record').toBe(told.living[i]!.followed > 0);
          expect(share).toBe(told.living[i]!.share);
          before = { share: share!, low: low!, high: high! };
        });
        expect(whole.ten_years).toBe(whole.living[9]);
        expect(whole.first_crop).toBe(whole.living[told.first_crop.age - 1]);
        expect(whole.first_crop.share).toBeGreaterThanOrEqual(whole.ten_years.share!);
        const { years, low, high } = whole.median_years;
        expect(years === null || whole.living[years - 1]!.share! <= 0.5).toBe(true);
        expect(low ?? Infinity).toBeLessThanOrEqual(years ?? Infinity);
        expect(high ?? Infinity).toBeGreaterThanOrEqual(years ?? Infinity);
      }),
      { numRuns: 60 },
    );
  });

  test('told in steps, for progress and for stopping', () => {
    const made = withLoss(quiet(30), 12, 'kill');
    const rings = makeRings({ complete: made.complete, random: seededRandom(1) });
    const steps = [...lifeRanges(rings, [{ ...TREE, margins: made }], 40)];
    expect(steps).toEqual([40, 80, 120, 160, 200]);
    expect(rangesOf(rings, [{ ...TREE, margins: made }], 7)).toEqual(
      rangesOf(rings, [{ ...TREE, margins: made }]),
    );
  });
});

describe('a curve that bounds the chance of a kill', () => {
  const rings = makeRings({ complete: quiet(60).complete, random: seededRandom(11) });
  const lowAt = (killAtMost: number | null, age: number): number =>
    oneRange(rings, { ...TREE, margins: quiet(60), killAtMost }).low[age - 1]!;

  test('lifts the low end to about what it allows, and never lowers it', () => {
    // 1 in 120 for twenty winters: 0.846; by the record's length alone 1 in 32: 0.53.
    expect(lowAt(1 / 120, 20)).toBeCloseTo((1 - 1 / 120) ** 20, 2);
    expect(lowAt(null, 20)).toBeCloseTo((1 - rings.unseenAtMost) ** 20, 2);
    expect(lowAt(0.5, 20)).toBe(lowAt(null, 20));
    expect(lowAt(1 / 120, 20)).toBeGreaterThan(lowAt(1 / 60, 20));
    expect(lowAt(1 / 120, 20)).toBeLessThan(1);
  });
});

describe('90 % ranges hold the true share (simulation; full table in tests/reference/life/coverage.json)', () => {
  const repetitions = 150;
  const some = kept.rows.filter(
    ({ startAgeYears, serial, winters, killOneIn }) =>
      startAgeYears === 6 &&
      ['0 60 20', '0 40 12', '0 40 40', '0.3 60 20'].includes(`${serial} ${winters} ${killOneIn}`),
  );

  test.each(some)(
    'about 1 in $killOneIn, $winters winters, correlation $serial: as in the table',
    ({ ages, ...history }) => {
      const rows = coverageOf(history, repetitions, { draws: 120, truthWinters: 60_000 });
      rows.forEach(({ age, truth, held, greenwoodHeld }, i) => {
        expect(age).toBe(ages[i]!.age);
        expect(Math.abs(truth - ages[i]!.truth)).toBeLessThan(0.03);
        // Four standard errors of a share of 0.9 in 150.
        expect(Math.abs(held - ages[i]!.held)).toBeLessThan(0.1);
        expect(greenwoodHeld).toBeLessThan(0.6);
      });
    },
  );

  const cells = kept.rows.flatMap(({ ages, ...history }) => ages.map((at) => ({ ...history, ...at })));

  test('the kept table: 85 to 95 %, but for 5 of 60 cells that miss by little', () => {
    expect(some).toHaveLength(4);
    expect(cells).toHaveLength(60);
    const outside = cells.filter(({ held }) => held < 0.85 || held > 0.95);
    expect(outside.length).toBeLessThanOrEqual(5);
    for (const { held, serial } of outside) {
      expect(held).toBeGreaterThan(serial === 0.5 ? 0.82 : 0.84);
      expect(held).toBeLessThanOrEqual(0.96);
    }
  });

  test('the dangerous side: seldom does the whole range lie above the truth', () => {
    for (const { above } of cells) expect(above).toBeLessThan(0.065);
  });

  test("Greenwood's formula would hold it in half of the histories at most", () => {
    for (const { greenwoodHeld, greenwoodMeanWidth, meanWidth } of cells) {
      expect(greenwoodHeld).toBeLessThan(0.5);
      expect(greenwoodMeanWidth).toBeLessThan(meanWidth / 1.8);
    }
  });
});
