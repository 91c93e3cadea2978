import { sayFigureText } from '../../analysis/language/figures.ts';
import { t } from '../../analysis/language/t.ts';
import {
  celsiusDifferenceToFahrenheit,
  celsiusToFahrenheit,
  fahrenheitToCelsius,
} from '../../analysis/units/temperature.ts';
import { unitSymbol, type TemperatureUnit } from './unit.ts';

const MINUS = '\u2212';
/** Keeps a figure and its unit on one line. */
export const FIXED_SPACE = '\u00a0';

/** A temperature in the shown unit, as a number. For penalties, gains and errors use {@link differenceIn}. */
export function temperatureIn(temperatureC: number, unit: TemperatureUnit): number {
  return unit === 'F' ? celsiusToFahrenheit(temperatureC) : temperatureC;
}

/** A difference of temperatures in the shown unit, as a number. */
export function differenceIn(differenceC: number, unit: TemperatureUnit): number {
  return unit === 'F' ? celsiusDifferenceToFahrenheit(differenceC) : differenceC;
}

/** A temperature written in the shown unit, back to °C. */
export function temperatureToC(shown: number, unit: TemperatureUnit): number {
  return unit === 'F' ? fahrenheitToCelsius(shown) : shown;
}

/** Digits behind the point: °F in whole degrees, °C in tenths, unless told otherwise. */
function digitsFor(unit: TemperatureUnit, digits?: number): number {
  return digits ?? (unit === 'F' ? 0 : 1);
}

/** A figure with a true minus sign and never "minus zero". */
export function figure(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return (value < 0 && Number(text) !== 0 ? MINUS : '') + sayFigureText(text);
}

/** `26 °F`, `−3.3 °C`; `null` gives an en dash. */
export function formatTemperature(
  temperatureC: number | null,
  unit: TemperatureUnit,
  digits?: number,
): string {
  if (temperatureC === null || !Number.isFinite(temperatureC)) return '\u2013';
  return `${formatTemperatureFigure(temperatureC, unit, digits)}${FIXED_SPACE}${unitSymbol(unit)}`;
}

/** The figure alone, for columns and axes whose heading names the unit. */
export function formatTemperatureFigure(
  temperatureC: number | null,
  unit: TemperatureUnit,
  digits?: number,
): string {
  if (temperatureC === null || !Number.isFinite(temperatureC)) return '\u2013';
  return figure(temperatureIn(temperatureC, unit), digitsFor(unit, digits));
}

/** `23 to 27 °F`; one figure when both ends round to the same. */
export function formatTemperatureRange(
  lowC: number,
  highC: number,
  unit: TemperatureUnit,
  digits?: number,
): string {
  const low = formatTemperatureFigure(lowC, unit, digits);
  const high = formatTemperatureFigure(highC, unit, digits);
  const symbol = FIXED_SPACE + unitSymbol(unit);
  return low === high ? low + symbol : t`${low} to ${high}` + symbol;
}

/** A signed difference: `+2.0 °F`, `−1.1 °C`, `0 °F`. One digit unless told otherwise. */
export function formatDifference(differenceC: number, unit: TemperatureUnit, digits = 1): string {
  return signedFigure(differenceC, unit, digits) + FIXED_SPACE + unitSymbol(unit);
}

/** The same without its unit, for columns: `+4.5`, `0`. */
export function signedFigure(differenceC: number, unit: TemperatureUnit, digits = 1): string {
  const value = differenceIn(differenceC, unit);
  if (Number(value.toFixed(digits)) === 0) return '0';
  return (value > 0 ? '+' : '') + figure(value, digits);
}

/** The size of a difference without its sign: `2.0 °F`. */
export function formatSize(differenceC: number, unit: TemperatureUnit, digits = 1): string {
  return formatDifference(Math.abs(differenceC), unit, digits).replace('+', '');
}

/** A step that gives about `count` round marks over `span` in the shown unit: 1, 2, 5, 10, 20... */
function roundStep(span: number, count: number): number {
  const raw = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(raw));
  const factor = raw / power;
  const step = (factor > 5 ? 10 : factor > 2 ? 5 : factor > 1 ? 2 : 1) * power;
  return Math.max(1, step);
}

/** Axis marks that are round in the shown unit; each keeps its place in °C and its label (without the unit). */
export function temperatureTicks(
  lowC: number,
  highC: number,
  unit: TemperatureUnit,
  count = 6,
): { temperatureC: number; label: string }[] {
  const low = temperatureIn(lowC, unit);
  const high = temperatureIn(highC, unit);
  if (!(high > low)) return [];
  const step = roundStep(high - low, count);
  const ticks: { temperatureC: number; label: string }[] = [];
  for (let value = Math.ceil(low / step) * step; value <= high + 1e-9; value += step) {
    ticks.push({ temperatureC: temperatureToC(value, unit), label: figure(value, 0) });
  }
  return ticks;
}
