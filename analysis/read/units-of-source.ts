import { t } from '../language/t.ts';
import { UnclearError } from '../records/input-error.ts';
import { fahrenheitToCelsius } from '../units/temperature.ts';

/** Unit in which a source writes temperatures. */
export type TemperatureUnit = 'C' | 'F' | 'tenthsC' | 'tenthsF';
/** Unit in which a source writes wind speed. */
export type WindUnit = 'm/s' | 'tenths m/s' | 'km/h' | 'km/day' | 'mph' | 'kn';

export const TEMPERATURE_UNITS: readonly TemperatureUnit[] = ['C', 'F', 'tenthsC', 'tenthsF'];
const WIND_TO_MS: Readonly<Record<WindUnit, number>> = {
  'm/s': 1,
  'tenths m/s': 0.1,
  'km/h': 1 / 3.6,
  'km/day': 1 / 86.4,
  mph: 0.44704,
  kn: 1852 / 3600,
};
export const WIND_UNITS = Object.keys(WIND_TO_MS) as readonly WindUnit[];

/** Turns temperatures in the source's unit into °C, in place. */
export function toCelsius(values: Float64Array, unit: TemperatureUnit): void {
  if (unit === 'C') return;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (unit === 'F') values[i] = fahrenheitToCelsius(value);
    else if (unit === 'tenthsC') values[i] = value / 10;
    else values[i] = fahrenheitToCelsius(value / 10);
  }
}

/** Turns wind speeds in the source's unit into m/s, in place. */
export function toMetresPerSecond(values: Float64Array, unit: WindUnit): void {
  const factor = WIND_TO_MS[unit];
  if (factor === 1) return;
  for (let i = 0; i < values.length; i += 1) values[i] = values[i]! * factor;
}

/** Beyond the warmest and coldest air temperature ever measured, in °F: a whole file's worth can't be °F or °C. */
const BEYOND_ANY_F = 140;
const BEYOND_ANY_COLD_F = -130;

/**
 * What the values of a whole file prove about their unit, `null` where °F and °C are both open.
 *
 * - `tenthsC`: all whole, and one in fifty lies beyond any air temperature on earth in °F (so in °C too).
 * - `C`: nearly all are °F degrees turned into tenths of °C (-2.2 for 28 °F): only 5 in 9 tenths are, so a hundred
 *   values in a row are no accident, and whole °F would have no decimals.
 */
function provenUnit(columns: readonly Float64Array[]): 'tenthsC' | 'C' | null {
  let [count, whole, beyond, images] = [0, 0, 0, 0];
  for (const values of columns) {
    for (const value of values) {
      if (Number.isNaN(value)) continue;
      count += 1;
      if (Number.isInteger(value)) whole += 1;
      if (value > BEYOND_ANY_F || value < BEYOND_ANY_COLD_F) beyond += 1;
      const fahrenheit = Math.round(value * 1.8 + 32);
      if (Math.abs(Math.round(((fahrenheit - 32) / 1.8) * 10) / 10 - value) < 1e-6) images += 1;
    }
  }
  if (count >= 30 && whole === count && beyond >= count / 50) return 'tenthsC';
  if (count >= 100 && images >= count * 0.99 && whole <= count * 0.8) return 'C';
  return null;
}

/** Wind unit that goes with a temperature unit where the source states only that one (NOAA order files). */
export function windUnitBeside(unit: TemperatureUnit): WindUnit {
  if (unit === 'F' || unit === 'tenthsF') return 'mph';
  return unit === 'C' ? 'm/s' : 'tenths m/s';
}

/**
 * The unit of a file's temperatures: what its format states; else tenths of °C where the values prove it, since neither
 * °F nor °C could be right; else the unit given by the user, unless the values disprove it.
 *
 * @param isHourlyOrder NOAA's hourly order files state no unit but hold whole °F, or, since 2024, tenths of °C.
 * @throws {UnclearError} when the unit isn't stated and none is given.
 */
export function decideUnit(
  fileName: string,
  columns: readonly Float64Array[],
  stated: TemperatureUnit | null,
  given: TemperatureUnit | null,
  isHourlyOrder: boolean,
): { unit: TemperatureUnit; note: string | null } {
  if (stated) return { unit: stated, note: null };
  if (isHourlyOrder) {
    const whole = shareOfWhole(columns) > 0.9;
    return {
      unit: whole ? 'F' : 'C',
      note: whole
        ? null
        : t`${fileName} holds tenths of a degree, so it was read as °C (hourly order files in °F are whole).`,
    };
  }
  const proven = provenUnit(columns);
  if (proven === 'tenthsC') {
    return { unit: proven, note: t`${fileName} was read as tenths of °C: its values fit neither °F nor °C.` };
  }
  if (given === null) {
    throw new UnclearError(
      t`${fileName}: the unit of the temperatures isn't stated: --unit F or --unit C is needed.`,
      'unit',
    );
  }
  if (proven === 'C' && given === 'F') {
    return {
      unit: 'C',
      note: t`${fileName} was read as °C, not °F: its values are whole °F turned into tenths of °C.`,
    };
  }
  return { unit: given, note: null };
}

function shareOfWhole(columns: readonly Float64Array[]): number {
  let [count, whole] = [0, 0];
  for (const values of columns) {
    for (const value of values) {
      if (Number.isNaN(value)) continue;
      count += 1;
      if (Number.isInteger(value)) whole += 1;
    }
  }
  return count === 0 ? 1 : whole / count;
}
