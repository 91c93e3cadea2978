import type { PackLeftOutStation, PackReliabilityBin } from '../../../analysis/records/pack.ts';

/** Room left and below for figures, px. */
export const LEAVE_OUT_MARGINS = { top: 14, right: 14, bottom: 44, left: 46 };

/** Side of the square drawn in a box of `width` px. */
export function squareSide(width: number): number {
  const { left, right } = LEAVE_OUT_MARGINS;
  return Math.max(120, Math.min(420, width - left - right));
}

/** Coldest and warmest of all levels observed and predicted, with room at both ends, °C; ranges may run out of it. */
export function levelExtent(stations: readonly PackLeftOutStation[]): [coldC: number, warmC: number] {
  const levels = stations.flatMap(({ observed_c: observed, predicted_c: predicted }) => [
    observed,
    predicted,
  ]);
  return [Math.min(...levels) - 1, Math.max(...levels) + 1];
}

/** True when the observed level lies in the 90 % range. */
export function holds({ observed_c: observed, low_c: low, high_c: high }: PackLeftOutStation): boolean {
  return observed >= low && observed <= high;
}

/** Radius of a bin's mark, px: its area grows with the root of what it stands for, and stays legible. */
export function binRadius({ count }: PackReliabilityBin, bins: readonly PackReliabilityBin[]): number {
  const most = Math.max(...bins.map((bin) => bin.count));
  return 3 + 5 * Math.sqrt(Math.sqrt(count / most));
}
