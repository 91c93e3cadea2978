import { FIXED_SPACE } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

const KM_PER_MILE = 1.609344;
export const M_PER_FOOT = 0.3048;

/** `12,345`. */
export function formatCount(count: number): string {
  return String(Math.round(count)).replace(/\B(?=(\d{3})+$)/g, ',');
}

/** `1 winter`, `12 winters`. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${formatCount(count)} ${count === 1 ? one : many}`;
}

/** A chance 0-1 as `34%`; the ends say `under 1%` and `over 99%`, since no record proves never or always. */
export function formatChance(chance: number | null): string {
  if (chance === null || !Number.isFinite(chance)) return '\u2013';
  if (chance > 0 && chance < 0.01) return `under 1%`;
  if (chance < 1 && chance > 0.99) return `over 99%`;
  return `${Math.round(chance * 100)}%`;
}

/** `340 kB`, `7.6 MB` (powers of ten, as browsers count transfers). */
export function formatBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1e6) return `${Math.round(bytes / 1000)} kB`;
  return `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
}

/** Miles beside °F, kilometres beside °C: `4 mi`, `6 km`; below 10 with one digit. */
export function formatDistance(distanceKm: number | null, unit: TemperatureUnit): string {
  if (distanceKm === null) return '\u2013';
  const value = unit === 'F' ? distanceKm / KM_PER_MILE : distanceKm;
  return `${value < 9.95 ? value.toFixed(1) : formatCount(value)}${FIXED_SPACE}${unit === 'F' ? 'mi' : 'km'}`;
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
  const part = (value: number, positive: string, negative: string): string =>
    `${Math.abs(value).toFixed(2)}° ${value < 0 ? negative : positive}`;
  return `${part(lat, 'N', 'S')}, ${part(lon, 'E', 'W')}`;
}

/** Hours: `4 h`, `0.5 h`; 0 is `an instant`. */
export function formatHours(hours: number): string {
  return hours === 0 ? 'an instant' : `${Number(hours.toFixed(1))}${FIXED_SPACE}h`;
}
