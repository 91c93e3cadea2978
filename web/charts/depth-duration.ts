import { scalePow } from 'd3-scale';
import type { DepthDuration } from '../../analysis/answer/assessment.ts';

/** Level held for `hours`, with its 90 % range, °C. */
export interface CurvePoint {
  readonly hours: number;
  readonly levelC: number;
  readonly lowC: number | null;
  readonly highC: number | null;
}

/** Levels against hours, all reached about once in `periodWinters`. */
export interface DepthCurve {
  readonly periodWinters: number;
  readonly points: readonly CurvePoint[];
}

/** The flat list of an assessment as curves, most frequent first, hours rising; curves without a level are left out. */
export function depthCurves(cold: readonly DepthDuration[]): DepthCurve[] {
  const curves = new Map<number, CurvePoint[]>();
  for (const { hours, period_winters, level_c, low_c, high_c } of cold) {
    if (level_c === null) continue;
    if (!curves.has(period_winters)) curves.set(period_winters, []);
    curves.get(period_winters)!.push({ hours, levelC: level_c, lowC: low_c, highC: high_c });
  }
  return [...curves]
    .sort(([a], [b]) => a - b)
    .map(([periodWinters, points]) => ({
      periodWinters,
      points: points.sort((a, b) => a.hours - b.hours),
    }));
}

/** Hours labelled on the axis. */
export const HOUR_TICKS = [0, 1, 2, 4, 6, 8, 12, 18, 24];

/**
 * Hours to px. A square root gives the first six hours, where trees are hurt, half of the width; 0 stays on the axis,
 * which a logarithm would lose.
 */
export function hoursScale(left: number, right: number): (hours: number) => number {
  return scalePow([0, 24], [left, right]).exponent(0.5);
}

/** Coldest and warmest level drawn, °C; the band of curve `banded` is inside too. */
export function depthExtent(
  curves: readonly DepthCurve[],
  banded: number | null,
): [coldC: number, warmC: number] {
  const levels = curves.flatMap(({ periodWinters, points }) =>
    points.flatMap(({ levelC, lowC, highC }) =>
      periodWinters === banded ? [levelC, lowC ?? levelC, highC ?? levelC] : [levelC],
    ),
  );
  return [Math.min(...levels) - 0.5, Math.max(...levels) + 0.5];
}

/**
 * Vertical places for labels at the ends of lines, pushed apart to at least `gap` px while keeping their order.
 * @param wanted places in px, rising.
 * @param lowest none stands below it, px
 */
export function spreadLabels(wanted: readonly number[], gap: number, lowest = Infinity): number[] {
  const placed = [...wanted];
  for (let pass = 0; pass < 50; pass++) {
    let moved = false;
    for (let i = 1; i < placed.length; i++) {
      const short = gap - (placed[i] - placed[i - 1]);
      if (short <= 0.01) continue;
      placed[i - 1] -= short / 2;
      placed[i] += short / 2;
      moved = true;
    }
    if (!moved) break;
  }
  for (let i = placed.length - 1, most = lowest; i >= 0; i--, most -= gap)
    placed[i] = Math.min(placed[i], most);
  return placed;
}

/** SVG path through points in px. */
export function linePath(points: readonly (readonly [x: number, y: number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)},${y.toFixed(1)}`).join('');
}
