import { t } from '../../../analysis/language/t.ts';
import { namedSpotAt } from '../../../analysis/spot/spot-text.ts';
import type { PlanPoint, Yard } from '../../../analysis/spot/yard.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';

/** A point of the yard in words: its name if it has one, else where it lies. */
export function calledPoint(yard: Yard, at: PlanPoint, unit: LengthUnit): string {
  const [east, north] = at.map((lengthM) => formatLength(lengthM, unit));
  const name = namedSpotAt(yard, at)?.name ?? t`The point ${east} east, ${north} north`;
  return t`${name} in the yard “${yard.name}”`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
