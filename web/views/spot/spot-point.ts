import type { PlanPoint, Yard } from '../../../analysis/spot/yard.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';

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

/** Named points nearer than this are meant, m; the answer says so too. */
const SAME_SPOT_M = 0.25;

/** A point of the yard in words: its name if it has one, else where it lies. */
export function calledPoint(yard: Yard, [east, north]: PlanPoint, unit: LengthUnit): string {
  const named = yard.spots.find(({ at }) => Math.hypot(at[0] - east, at[1] - north) < SAME_SPOT_M);
  const where = `${formatLength(east, unit)} east, ${formatLength(north, unit)} north`;
  return `${named?.name ?? `The point ${where}`} in the yard “${yard.name}”`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
