import { quantileType7 } from '../../math/quantile.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import { fahrenheitToCelsius } from '../../units/temperature.ts';
import { pairNights } from './pair-nights.ts';
import type { NightReading, ReadingUnit, SpotReading } from './spot-reading.ts';

/** Why readings are taken in a unit: chosen by the reader, stated in the text, told by the station's nights, or a guess. */
export type UnitBasis = 'chosen' | 'stated' | 'station' | 'guess';

/** Minima of cold nights mostly lie above this in °F and below it in °C. */
const BETWEEN = 14;
/** Nights that may tell the unit. */
const FEWEST = 3;

/** Readings in °C, from the unit they are taken in. */
export function readingsInC(readings: readonly SpotReading[], unit: ReadingUnit): NightReading[] {
  const toC = (value: number): number => (unit === 'F' ? fahrenheitToCelsius(value) : value);
  return readings.map(({ day, minimum, maximum, line }) => ({
    day,
    minimumC: toC(minimum),
    maximumC: maximum === null ? null : toC(maximum),
    line,
  }));
}

/** Half of the differences to the station lie within this either side of 0, °C; NaN with fewer than three nights. */
export function typicalDistanceC(readings: readonly NightReading[], nights: KeptNights): number {
  const { pairs } = pairNights(readings, nights);
  if (pairs.length < FEWEST) return NaN;
  return quantileType7(
    pairs.map(({ differenceC }) => Math.abs(differenceC)),
    0.5,
  );
}

/** The unit of readings whose text may or may not state it. */
export function decideReadingUnit(
  readings: readonly SpotReading[],
  nights: KeptNights | null,
  stated: ReadingUnit | null,
  chosen: ReadingUnit | null,
): { unit: ReadingUnit; basis: UnitBasis } {
  if (chosen) return { unit: chosen, basis: 'chosen' };
  if (stated) return { unit: stated, basis: 'stated' };
  if (nights) {
    const [asC, asF] = (['C', 'F'] as const).map((unit) =>
      typicalDistanceC(readingsInC(readings, unit), nights),
    ) as [number, number];
    if (asF < asC / 2) return { unit: 'F', basis: 'station' };
    if (asC < asF / 2) return { unit: 'C', basis: 'station' };
  }
  const middle = quantileType7(
    readings.map(({ minimum }) => minimum),
    0.5,
  );
  return { unit: middle > BETWEEN ? 'F' : 'C', basis: 'guess' };
}
