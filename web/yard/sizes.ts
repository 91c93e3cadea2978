import type { PlanPoint, YardThing } from '../../analysis/spot/yard.ts';
import { bearingTo } from './bearings.ts';
import { cornersOf, extentOf, withCorners } from './edit-yard.ts';
import { toGrain } from './snapping.ts';

/** East to west and south to north, m. */
export function sizeOf(thing: YardThing): { readonly acrossM: number; readonly upM: number } {
  const [west, south, east, north] = extentOf(cornersOf(thing));
  return { acrossM: toGrain(east - west), upM: toGrain(north - south) };
}

/** Stretched from its south-west corner to a size along one side; as it was where it has no extent there. */
export function stretchedTo(thing: YardThing, side: 'across' | 'up', sizeM: number): YardThing {
  const corners = cornersOf(thing);
  const [west, south, east, north] = extentOf(corners);
  const now = side === 'across' ? east - west : north - south;
  if (!(now > 0) || !(sizeM > 0)) return thing;
  const factor = sizeM / now;
  return withCorners(
    thing,
    corners.map(([x, y]): PlanPoint =>
      side === 'across'
        ? [toGrain(west + (x - west) * factor), y]
        : [x, toGrain(south + (y - south) * factor)],
    ),
  );
}

/** Length along all corners of a line, m. */
export function lineLength(corners: readonly PlanPoint[]): number {
  let lengthM = 0;
  for (let i = 1; i < corners.length; i++)
    lengthM += Math.hypot(corners[i][0] - corners[i - 1][0], corners[i][1] - corners[i - 1][1]);
  return lengthM;
}

/** Bearing of a straight line from its first corner, whole degrees clockwise from north. */
export function lineBearing([from, to]: readonly PlanPoint[]): number {
  return bearingTo(from, to, 1);
}

/** A straight line from the same first corner. */
export function straightLine(from: PlanPoint, lengthM: number, bearingDeg: number): readonly PlanPoint[] {
  const turn = (bearingDeg * Math.PI) / 180;
  return [from, [toGrain(from[0] + lengthM * Math.sin(turn)), toGrain(from[1] + lengthM * Math.cos(turn))]];
}
