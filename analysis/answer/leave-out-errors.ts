import { FittedWinters, type WinterFit } from '../extremes/fitted-winters.ts';
import { levelErrorC } from '../extremes/interpolation-error.ts';
import { KEPT_NIGHT_MAX_C } from '../records/nights.ts';
import type {
  PackIntervalScore,
  PackLeaveOutErrors,
  PackLeftOut,
  PackReliabilityBin,
} from '../records/pack.ts';
import type { LeftOutStation } from './leave-out.ts';

/** The level judged: 1 winter in 10 reaches it. */
export const JUDGED_PERIOD = 10;
/** Points of the standard normal that hold 90 % between them. */
const NORMAL_95 = 1.6449;
/** Baseline's fall of temperature with height: the standard atmosphere's, °C/m. */
const FALL_C_PER_M = 0.0065;
/** A neighbour nearer than this weighs no more, km. */
const NEAREST_WEIGHED_KM = 1;
/** Thresholds whose share of winters hit lies between count in the ratio. */
const TELLING_SHARES: readonly [number, number] = [0.05, 0.5];
/** Bins of predicted chance start here. */
const BIN_STARTS = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9];

interface Interval {
  readonly observedC: number;
  readonly predictedC: number;
  readonly lowC: number;
  readonly highC: number;
}

/** Errors of stations left out, for one duration; null where none could be judged. */
export function leaveOutErrors(
  hours: number,
  stations: readonly LeftOutStation[],
): { errors: PackLeaveOutErrors; details: PackLeftOut } | null {
  const judged = stations.flatMap((station) => {
    const observedC = levelOf(station.own);
    const whole = wholeInterval(station.whole, observedC);
    const same = sameInterval(station.same, observedC);
    return whole && same ? [{ station, whole, same, observedC }] : [];
  });
  if (judged.length === 0) return null;
  const whole = judged.map((entry) => entry.whole);
  const same = judged.map((entry) => entry.same);
  const baseline = (predict: (kept: LeftOutStation['kept']) => number): number =>
    rounded(mean(judged.map(({ station, observedC }) => Math.abs(predict(station.kept) - observedC))));
  const { ratio, bins } = hitShares(judged.map(({ station }) => station));
  return {
    errors: {
      hours,
      stations: judged.length,
      ...errorOf(whole),
      nearest_mean_error_c: baseline(([nearest]) => levelOf(nearest.own)),
      inverse_distance_mean_error_c: baseline(inverseDistance),
      interval: intervalScore(whole),
      same_winters: { ...errorOf(same), ...intervalScore(same) },
      hit_ratio: ratio,
    },
    details: {
      hours,
      reliability: bins,
      stations: judged.map(({ station: { id }, whole: { observedC, predictedC, lowC, highC } }) => ({
        id,
        observed_c: rounded(observedC),
        predicted_c: rounded(predictedC),
        low_c: rounded(lowC),
        high_c: rounded(highC),
      })),
    },
  };
}

/** Warm places may have no night that cold: then their level is the warmest kept, for either side. */
function levelOf(fit: WinterFit): number {
  return Math.min(KEPT_NIGHT_MAX_C, fit.level(JUDGED_PERIOD)?.levelC ?? KEPT_NIGHT_MAX_C);
}

function wholeInterval(fit: WinterFit, observedC: number): Interval | null {
  const level = fit.level(JUDGED_PERIOD);
  if (!level) return null;
  const { levelC, lowC, highC } = level;
  return { observedC, predictedC: levelC, lowC, highC: Math.min(KEPT_NIGHT_MAX_C, highC) };
}

function sameInterval(fit: WinterFit, observedC: number): Interval | null {
  const level = fit.level(JUDGED_PERIOD);
  if (!level || !(fit instanceof FittedWinters) || !fit.interpolation) return null;
  const predictedC = level.levelC;
  const half = NORMAL_95 * levelErrorC(fit.interpolation, predictedC);
  return { observedC, predictedC, lowC: predictedC - half, highC: predictedC + half };
}

function inverseDistance(kept: LeftOutStation['kept']): number {
  let sum = 0;
  let weights = 0;
  for (const { km, aboveM, own } of kept) {
    const weight = 1 / Math.max(km, NEAREST_WEIGHED_KM) ** 2;
    sum += weight * (levelOf(own) + FALL_C_PER_M * aboveM);
    weights += weight;
  }
  return sum / weights;
}

function errorOf(intervals: readonly Interval[]): { mean_error_c: number; bias_c: number } {
  const errors = intervals.map(({ predictedC, observedC }) => predictedC - observedC);
  return { mean_error_c: rounded(mean(errors.map(Math.abs))), bias_c: rounded(mean(errors)) };
}

/** Coverage, mean width and interval score of 90 % intervals: 2/0.1 for each degree outside. */
export function intervalScore(intervals: readonly Interval[]): PackIntervalScore {
  const inside = intervals.filter(({ observedC, lowC, highC }) => observedC >= lowC && observedC <= highC);
  return {
    coverage: rounded(inside.length / intervals.length),
    mean_width_c: rounded(mean(intervals.map(({ lowC, highC }) => highC - lowC))),
    score_c: rounded(
      mean(
        intervals.map(
          ({ observedC, lowC, highC }) =>
            highC - lowC + 20 * (Math.max(0, lowC - observedC) + Math.max(0, observedC - highC)),
        ),
      ),
    ),
  };
}

/** Predicted chances of a hit against winters hit, the same winters on both sides, at every whole degree. */
function hitShares(stations: readonly LeftOutStation[]): {
  ratio: number | null;
  bins: PackReliabilityBin[];
} {
  const bins = BIN_STARTS.map(() => ({ predicted: 0, observed: 0, count: 0 }));
  let predictedHits = 0;
  let observedHits = 0;
  const coldest = Math.floor(
    stations.reduce((low, { valuesC }) => valuesC.reduce((a, b) => (b < a ? b : a), low), KEPT_NIGHT_MAX_C),
  );
  for (let thresholdC = coldest; thresholdC < KEPT_NIGHT_MAX_C; thresholdC++) {
    const hits = stations.map(({ valuesC, same }) => ({
      winters: valuesC.length,
      observed: valuesC.reduce((sum, value) => sum + (value <= thresholdC ? 1 : 0), 0),
      chance: 1 / same.returnPeriod(thresholdC).period,
    }));
    const all = hits.reduce((sum, { winters }) => sum + winters, 0);
    const observed = hits.reduce((sum, hit) => sum + hit.observed, 0);
    const [from, to] = TELLING_SHARES;
    if (observed >= from * all && observed <= to * all) {
      observedHits += observed;
      predictedHits += hits.reduce((sum, { chance, winters }) => sum + chance * winters, 0);
    }
    for (const { chance, winters, observed: hit } of hits) {
      if (chance < 0.001 && hit === 0) continue;
      const bin = bins[BIN_STARTS.findLastIndex((start) => chance >= start)];
      bin.predicted += chance * winters;
      bin.observed += hit;
      bin.count += winters;
    }
  }
  return {
    ratio: observedHits > 0 ? rounded(predictedHits / observedHits) : null,
    bins: bins
      .filter(({ count }) => count > 0)
      .map(({ predicted, observed, count }) => ({
        predicted: rounded(predicted / count),
        observed: rounded(observed / count),
        count,
      })),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
