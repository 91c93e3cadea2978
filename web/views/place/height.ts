import { M_PER_FOOT } from '../../format/numbers.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { ELEVATION_MAX_M, ELEVATION_MIN_M } from '../../state/chosen.ts';

/** A height as it is typed: feet beside °F, metres beside °C; no unit behind it. */
export function heightIn(elevationM: number, unit: TemperatureUnit): string {
  return String(Math.round(unit === 'F' ? elevationM / M_PER_FOOT : elevationM));
}

/** Whole metres of what was typed, `null` when it is no height of land. Takes `1,200`, `1.200`, `12,5` and the true minus. */
export function heightToM(typed: string, unit: TemperatureUnit): number | null {
  const text = typed
    .trim()
    .replace('\u2212', '-')
    .replace(/[.,\s](?=\d{3}$)/, '')
    .replace(',', '.');
  if (!/^-?\d{1,5}(\.\d+)?$/.test(text)) return null;
  const elevationM = Math.round(Number(text) * (unit === 'F' ? M_PER_FOOT : 1));
  return elevationM >= ELEVATION_MIN_M && elevationM <= ELEVATION_MAX_M ? elevationM : null;
}
