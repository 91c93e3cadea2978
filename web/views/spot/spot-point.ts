import { namedSpotAt } from '../../../analysis/spot/spot-text.ts';
import type { PlanPoint, Yard } from '../../../analysis/spot/yard.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';

/** A point of the yard in words: its name if it has one, else where it lies. */
export function calledPoint(yard: Yard, at: PlanPoint, unit: LengthUnit): string {
  const where = `${formatLength(at[0], unit)} east, ${formatLength(at[1], unit)} north`;
  return `${namedSpotAt(yard, at)?.name ?? `The point ${where}`} in the yard “${yard.name}”`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
