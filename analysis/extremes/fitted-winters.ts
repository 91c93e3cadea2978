import { quantileType7InPlace } from '../math/quantile.ts';
import { chanceWithin } from './chance-within.ts';
import type { GevDraws } from './gev-draws.ts';
import { gevReturnLevel, gevSurvival, gevSurvivals, type Gev } from './gev.ts';
import { averagedChance, type InterpolationError } from './interpolation-error.ts';
import type { PeriodRange } from './period-range.ts';
import type { ShapeEstimate } from './pooled-shape.ts';

/** A chance of at least one hit and its 90 % range. */
export interface ChanceEstimate {
  readonly p: number;
  readonly low: number;
  readonly high: number;
}

/** A level in °C and its 90 % range, `lowC` the colder end. */
export interface LevelEstimate {
  readonly levelC: number;
  readonly lowC: number;
  readonly highC: number;
}

/** What a fit of winter values can be asked. Thresholds in °C, ranges 90 %. */
export interface WinterFit {
  /** False where no curve could be drawn and the answers are the count's. */
  readonly hasCurve: boolean;
  /** Winters between values at or below `thresholdC`. */
  returnPeriod(thresholdC: number): PeriodRange;
  /** Chance of at least one winter at or below `thresholdC` within `winters` winters. */
  chanceWithin(thresholdC: number, winters: number): ChanceEstimate;
  /** Level that about 1 winter in `periodWinters` (above 1) reaches; null where no curve can tell. */
  level(periodWinters: number): LevelEstimate | null;
}

/**
 * The curve of one place, one number of hours and one pair of gains, with its draws: made once and asked about every
 * threshold. Chance of a hit = share of winters with a cold night x GEV of their negated values.
 */
export class FittedWinters implements WinterFit {
  readonly hasCurve = true;
  readonly gev: Gev;
  readonly shape: ShapeEstimate;
  readonly draws: GevDraws;
  /** Share of the complete winters that have a value; the chance of a hit can't pass it. */
  readonly coldShare: number;
  /** How far the winters may be off where there is no station; `null` at a station. */
  readonly interpolation: InterpolationError | null;
  readonly #drawnShare: Float64Array | null;
  readonly #scratch: Float64Array;
  /** Threshold whose chances are in the scratch array, NaN for none. */
  #filledFor = NaN;
  /** Types share thresholds, and a draw's chance costs a logarithm and two exponentials: each is worked out once. */
  readonly #ranges = new Map<number, ChanceRange>();
  readonly #within = new Map<string, ChanceEstimate>();

  constructor(
    gev: Gev,
    shape: ShapeEstimate,
    draws: GevDraws,
    coldShare = 1,
    drawnShare: Float64Array | null = null,
    interpolation: InterpolationError | null = null,
  ) {
    this.gev = gev;
    this.shape = shape;
    this.draws = draws;
    this.coldShare = coldShare;
    this.#drawnShare = drawnShare;
    this.interpolation = interpolation;
    this.#scratch = new Float64Array(draws.k.length);
  }

  /** Chance that a winter's value is at or below `thresholdC`, averaged over the error of interpolation if there is one. */
  chance(thresholdC: number): number {
    const curve = (levelC: number) => gevSurvival(-levelC, this.gev);
    const { interpolation } = this;
    const p = interpolation ? averagedChance(curve, thresholdC, interpolation) : curve(thresholdC);
    return this.coldShare * p;
  }

  /** Winters between values at or below `thresholdC`, with the 5 to 95 % range of the draws. */
  returnPeriod(thresholdC: number): PeriodRange {
    const p = this.chance(thresholdC);
    const { low, high } = this.#range(thresholdC);
    return { period: 1 / p, low: 1 / Math.max(p, high), high: 1 / Math.min(p, low) };
  }

  /** Chance of at least one hit within `winters` winters: mean over the draws, and their 5 to 95 % range. */
  chanceWithin(thresholdC: number, winters: number): ChanceEstimate {
    const key = `${thresholdC} ${winters}`;
    let estimate = this.#within.get(key);
    if (!estimate) {
      const { low, high } = this.#range(thresholdC);
      this.#fillChances(thresholdC);
      const scratch = this.#scratch;
      let sum = 0;
      for (let b = 0; b < scratch.length; b++) sum += chanceWithin(scratch[b]!, winters);
      const p = sum / scratch.length;
      estimate = { p, low: chanceWithin(low, winters), high: chanceWithin(high, winters) };
      this.#within.set(key, estimate);
    }
    return estimate;
  }

  /**
   * Level that about 1 winter in `periodWinters` reaches, null where that is warmer than every cold night (more
   * winters than that have none).
   * @throws RangeError unless `periodWinters` is above 1.
   */
  level(periodWinters: number): LevelEstimate | null {
    if (!(periodWinters > 1)) throw new RangeError(`A return period must be above 1, not ${periodWinters}.`);
    const { location, scale, k } = this.draws;
    const levelC = drawnLevel(periodWinters * this.coldShare, this.gev);
    if (levelC === Infinity) return null;
    const scratch = this.#scratch;
    this.#filledFor = NaN;
    for (let b = 0; b < scratch.length; b++) {
      const share = this.#drawnShare ? this.#drawnShare[b]! : 1;
      scratch[b] = drawnLevel(periodWinters * share, { location: location[b]!, scale: scale[b]!, k: k[b]! });
    }
    const lowC = Math.min(levelC, quantileType7InPlace(scratch, 0.05));
    return { levelC, lowC, highC: Math.max(levelC, quantileType7InPlace(scratch, 0.95)) };
  }

  #range(thresholdC: number): ChanceRange {
    const range = this.#ranges.get(thresholdC) ?? this.#fillChances(thresholdC);
    this.#ranges.set(thresholdC, range);
    return range;
  }

  /** Puts the draws' chances into the scratch array, always in the same order, and finds their 5 to 95 % range. */
  #fillChances(thresholdC: number): ChanceRange {
    const known = this.#ranges.get(thresholdC);
    if (known && thresholdC === this.#filledFor) return known;
    this.#filledFor = thresholdC;
    const scratch = this.#scratch;
    gevSurvivals(-thresholdC, this.draws.location, this.draws.scale, this.draws.k, scratch);
    if (this.#drawnShare)
      for (let b = 0; b < scratch.length; b++) scratch[b] = scratch[b]! * this.#drawnShare[b]!;
    return { low: quantileType7InPlace(scratch, 0.05), high: quantileType7InPlace(scratch, 0.95) };
  }
}

/** 5 and 95 % of the draws' chances of a winter at or below one threshold. */
interface ChanceRange {
  readonly low: number;
  readonly high: number;
}

function drawnLevel(periodAmongCold: number, gev: Gev): number {
  return periodAmongCold > 1 ? -gevReturnLevel(periodAmongCold, gev) : Infinity;
}
