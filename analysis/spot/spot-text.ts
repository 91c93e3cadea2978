import type { PlanPoint, Yard, YardSpot } from './yard.ts';

const IN_YARD = /^yard:(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)$/;
/** Two points of the plan nearer than this are the same spot, m. */
const SAME_SPOT_M = 0.25;

/** The point of the yard, m east and north, that a choice of spot such as `yard:4.5,12` names; `null` where it names none. */
export function pointOfSpot(spot: string | null): PlanPoint | null {
  const found = IN_YARD.exec(spot ?? '');
  return found ? [Number(found[1]), Number(found[2])] : null;
}

/** A point of the yard as a choice of spot, to the centimetre: `yard:4.5,12`. */
export function spotOfPoint([east, north]: PlanPoint): string {
  return `yard:${Number(east.toFixed(2))},${Number(north.toFixed(2))}`;
}

/** The spot of a yard that has its name at this point. */
export function namedSpotAt({ spots }: Pick<Yard, 'spots'>, [east, north]: PlanPoint): YardSpot | undefined {
  return spots.find(({ at }) => Math.hypot(at[0] - east, at[1] - north) < SAME_SPOT_M);
}
