import { t } from '../../../analysis/language/t.ts';
import { coversGround, groundTaken } from '../../../analysis/spot/ground-taken.ts';
import { offsetAt, prepareYard, type SpotOffset } from '../../../analysis/spot/offset-at.ts';
import type { OffsetField } from '../../../analysis/spot/offset-field.ts';
import { winterSunHours } from '../../../analysis/spot/sun-hours.ts';
import type { PlanPoint, Yard } from '../../../analysis/spot/yard.ts';
import { formatDifference } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { formatLength, type LengthUnit } from '../../yard/lengths.ts';
import { cellAt } from '../../yard/paint-field.ts';

/** One point of a yard in full. */
export interface PointReading {
  /** `null` where no tree can stand. */
  readonly offset: SpotOffset | null;
  readonly sunHours: number;
}

/** Reads points of one yard: what takes long is done once. */
export function yardReader(yard: Yard, latDeg: number): (at: PlanPoint) => PointReading {
  const prepared = prepareYard(yard, latDeg);
  const taken = groundTaken(yard);
  return (at) => {
    if (coversGround(taken, at[0], at[1], 0)) return { offset: null, sunHours: 0 };
    return {
      offset: offsetAt(prepared, at),
      sunHours: winterSunHours(prepared.obstacles, at, latDeg),
    };
  };
}

/** A point under the pointer in a few lines, by its cell of the field; empty where there is nothing to tell. */
export function hoverLines(
  field: OffsetField,
  at: PlanPoint,
  unit: TemperatureUnit,
  lengthUnit: LengthUnit,
): readonly string[] {
  const [calm, windy] = [cellAt(field, 'calm', at), cellAt(field, 'windy', at)];
  if (!calm || !windy) return [];
  const told = ({ offsetC, halfRangeC }: typeof calm): string =>
    formatDifference(offsetC, unit) +
    (halfRangeC < 0.05
      ? ''
      : ` ± ${formatDifference(halfRangeC, unit).replace('+', '').replace(/\s.*$/, '')}`);
  return [
    t`Calm ${told(calm)}`,
    t`Windy ${told(windy)}`,
    t`${formatLength(at[0], lengthUnit)} east, ${formatLength(at[1], lengthUnit)} north`,
  ];
}
