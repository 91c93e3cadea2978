import type { PlanPoint } from '../../../analysis/spot/yard.ts';

const IN_YARD = /^yard:(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)$/;

/** The point of the yard that a choice of spot names, `null` where it names none. */
export function pointOfSpot(spot: string | null): PlanPoint | null {
  const found = IN_YARD.exec(spot ?? '');
  return found ? [Number(found[1]), Number(found[2])] : null;
}

/** A point of the yard as a choice of spot: `yard:4.5,12`. */
export function spotOfPoint([east, north]: PlanPoint): string {
  return `yard:${Number(east.toFixed(2))},${Number(north.toFixed(2))}`;
}
