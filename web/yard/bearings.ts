import { sideName } from '../../analysis/spot/side-name.ts';
import type { PlanPoint, Yard } from '../../analysis/spot/yard.ts';

/** What of a yard has a bearing, drawn as an arrow in the margin of the plan. */
export type BearingOf = 'wind' | 'slope' | 'water';

/** An arrow in the margin is turned in steps of so many degrees. */
const STEP_DEG = 5;

/** Bearings of the eight directions, for a list to choose from. */
export const DIRECTIONS: readonly { readonly bearingDeg: number; readonly name: string }[] = Array.from(
  { length: 8 },
  (_, i) => ({ bearingDeg: i * 45, name: sideName(i * 45) }),
);

/** Bearing from one point to another, degrees clockwise from north (0 to below 360), in steps of `stepDeg`. */
export function bearingTo(from: PlanPoint, to: PlanPoint, stepDeg = STEP_DEG): number {
  const deg = (Math.atan2(to[0] - from[0], to[1] - from[1]) * 180) / Math.PI;
  return (((Math.round(deg / stepDeg) * stepDeg) % 360) + 360) % 360;
}

/** The bearing of one of them, `null` where the yard has no such thing. */
export function bearingOf(yard: Yard, of: BearingOf): number | null {
  if (of === 'wind') return yard.coldWindFromDeg;
  return of === 'slope' ? (yard.slope?.towardsDeg ?? null) : (yard.bigWater?.bearingDeg ?? null);
}

/** The yard with the arrow turned so that it lies towards a point, seen from the middle of the plot. */
export function withBearing(yard: Yard, of: BearingOf, at: PlanPoint): Yard {
  const deg = bearingTo([yard.widthM / 2, yard.depthM / 2], at);
  if (of === 'wind') return { ...yard, coldWindFromDeg: deg };
  if (of === 'slope') return yard.slope ? { ...yard, slope: { ...yard.slope, towardsDeg: deg } } : yard;
  return yard.bigWater ? { ...yard, bigWater: { ...yard.bigWater, bearingDeg: deg } } : yard;
}

/** The point of the plot's edge that lies in a direction from its middle, m. */
export function edgePoint(
  { widthM, depthM }: Pick<Yard, 'widthM' | 'depthM'>,
  bearingDeg: number,
): PlanPoint {
  const turn = (bearingDeg * Math.PI) / 180;
  const [dx, dy] = [Math.sin(turn), Math.cos(turn)];
  const reach = Math.min(
    Math.abs(dx) > 1e-9 ? widthM / 2 / Math.abs(dx) : Infinity,
    Math.abs(dy) > 1e-9 ? depthM / 2 / Math.abs(dy) : Infinity,
  );
  return [widthM / 2 + dx * reach, depthM / 2 + dy * reach];
}
