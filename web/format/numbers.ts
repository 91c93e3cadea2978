import { sayCount, sayFigure, sayFigureText, sayPercent } from '../../analysis/language/figures.ts';
import { t } from '../../analysis/language/t.ts';
import { FIXED_SPACE } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

const KM_PER_MILE = 1.609344;
export const M_PER_FOOT = 0.3048;

/** `12,345`. */
export function formatCount(count: number): string {
  return sayCount(count);
}

/** `1 winter`, `12 winters`. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${formatCount(count)} ${count === 1 ? one : many}`;
}

/** A chance 0-1 as `34%`; the ends say `under 1%` and `over 99%`, since no record proves never or always. */
export function formatChance(chance: number | null): string {
  if (chance === null || !Number.isFinite(chance)) return '\u2013';
  if (chance > 0 && chance < 0.01) return t`under ${sayPercent(1)}`;
  if (chance < 1 && chance > 0.99) return t`over ${sayPercent(99)}`;
  return sayPercent(Math.round(chance * 100));
}

/** `340 kB`, `7.6 MB`, `11 GB` (powers of ten, as browsers count transfers). */
export function formatBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1e6) return `${Math.round(bytes / 1000)} kB`;
  if (bytes < 1e9) return `${sayFigure(bytes / 1e6, bytes < 1e7 ? 1 : 0)} MB`;
  return `${sayFigure(bytes / 1e9, bytes < 1e10 ? 1 : 0)} GB`;
}

/** Miles beside °F, kilometres beside °C: `4 mi`, `6 km`; below 10 with one digit. */
export function formatDistance(distanceKm: number | null, unit: TemperatureUnit): string {
  if (distanceKm === null) return '\u2013';
  const value = unit === 'F' ? distanceKm / KM_PER_MILE : distanceKm;
  return `${value < 9.95 ? sayFigure(value, 1) : formatCount(value)}${FIXED_SPACE}${unit === 'F' ? 'mi' : 'km'}`;
}

/** Feet beside °F, metres beside °C. */
export function formatElevation(elevationM: number | null, unit: TemperatureUnit): string {
  if (elevationM === null) return '\u2013';
  const value = Math.round(unit === 'F' ? elevationM / M_PER_FOOT : elevationM);
  const text = (value < 0 ? '\u2212' : '') + formatCount(Math.abs(value));
  return `${text}${FIXED_SPACE}${unit === 'F' ? 'ft' : 'm'}`;
}

/** `30.62° N, 42.10° W`. */
export function formatPoint(lat: number, lon: number): string {
  const [north, east] = [lat, lon].map((value) => sayFigure(Math.abs(value), 2));
  const latitude = lat < 0 ? t`${north}° S` : t`${north}° N`;
  return `${latitude}, ${lon < 0 ? t`${east}° W` : t`${east}° E`}`;
}

/** Hours: `4 h`, `0.5 h`; 0 is `an instant`. */
export function formatHours(hours: number): string {
  return hours === 0 ? t`an instant` : `${formatPlain(hours, 1)}${FIXED_SPACE}h`;
}

/** A figure of at most so many digits behind the decimal sign, without noughts at its end: `2`, `2.5`. */
export function formatPlain(value: number, most: number): string {
  return sayFigureText(String(Number(value.toFixed(most))));
}

/** Whole hundredths as they are: `34%`. For a chance use {@link formatChance}. */
export function formatPercent(whole: number): string {
  return sayPercent(whole);
}
