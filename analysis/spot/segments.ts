import { signedAreaM2 } from './outline.ts';
import type { PlanPoint } from './yard.ts';

/** Straight sides laid end to end for fast looping: ends in metres of the plan. */
export interface Segments {
  readonly count: number;
  readonly fromEast: Float64Array;
  readonly fromNorth: Float64Array;
  readonly toEast: Float64Array;
  readonly toNorth: Float64Array;
}

export type Side = readonly [from: PlanPoint, to: PlanPoint];

/** Sides of an outline, the last one closing it. */
export function sidesOfOutline(outline: readonly PlanPoint[]): Side[] {
  return outline.map((from, at) => [from, outline[(at + 1) % outline.length]]);
}

/** Sides of a line that doesn't close. */
export function sidesOfLine(line: readonly PlanPoint[]): Side[] {
  return line.slice(1).map((to, at) => [line[at], to]);
}

export function segmentsOf(sides: readonly Side[]): Segments {
  return {
    count: sides.length,
    fromEast: Float64Array.from(sides, ([from]) => from[0]),
    fromNorth: Float64Array.from(sides, ([from]) => from[1]),
    toEast: Float64Array.from(sides, ([, to]) => to[0]),
    toNorth: Float64Array.from(sides, ([, to]) => to[1]),
  };
}

/** Squared distance, m², from a point to one side. */
export function squaredDistanceTo(segments: Segments, side: number, eastM: number, northM: number): number {
  const fromEast = segments.fromEast[side];
  const fromNorth = segments.fromNorth[side];
  const alongEast = segments.toEast[side] - fromEast;
  const alongNorth = segments.toNorth[side] - fromNorth;
  const lengthSquared = alongEast * alongEast + alongNorth * alongNorth;
  let at = 0;
  if (lengthSquared > 0) {
    at = ((eastM - fromEast) * alongEast + (northM - fromNorth) * alongNorth) / lengthSquared;
    at = at < 0 ? 0 : at > 1 ? 1 : at;
  }
  const awayEast = eastM - fromEast - at * alongEast;
  const awayNorth = northM - fromNorth - at * alongNorth;
  return awayEast * awayEast + awayNorth * awayNorth;
}

/** Distance, m, from a point to the nearest of the sides from `first` on and before `end`; Infinity without sides. */
export function distanceToSides(
  segments: Segments,
  eastM: number,
  northM: number,
  first = 0,
  end = segments.count,
): number {
  let nearest = Infinity;
  for (let side = first; side < end; side++) {
    nearest = Math.min(nearest, squaredDistanceTo(segments, side, eastM, northM));
  }
  return Math.sqrt(nearest);
}

/** Whether a point lies within the outline made up of the sides from `first` on and before `end`. */
export function isWithin(
  segments: Segments,
  eastM: number,
  northM: number,
  first = 0,
  end = segments.count,
): boolean {
  const { fromEast, fromNorth, toEast, toNorth } = segments;
  let within = false;
  for (let side = first; side < end; side++) {
    if (fromNorth[side] > northM === toNorth[side] > northM) continue;
    const at = (northM - fromNorth[side]) / (toNorth[side] - fromNorth[side]);
    if (fromEast[side] + at * (toEast[side] - fromEast[side]) > eastM) within = !within;
  }
  return within;
}

/** Outlines laid end to end: outline `k` has the sides from `first[k]` on and before `first[k + 1]`. */
export interface Outlines {
  readonly segments: Segments;
  readonly first: readonly number[];
  readonly areaM2: readonly number[];
}

export function outlinesOf(outlines: readonly (readonly PlanPoint[])[]): Outlines {
  const first = [0];
  for (const outline of outlines) first.push(first[first.length - 1] + outline.length);
  return {
    segments: segmentsOf(outlines.flatMap(sidesOfOutline)),
    first,
    areaM2: outlines.map((outline) => Math.abs(signedAreaM2(outline))),
  };
}
