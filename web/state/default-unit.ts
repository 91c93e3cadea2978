import type { TemperatureUnit } from '../format/unit.ts';
import { readKept, type Storage } from './kept.ts';

export const UNIT_KEY = 'citrus-winters-unit';

/** Countries and territories whose weather is told in °F (ISO 3166). */
const FAHRENHEIT = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'BS', 'BZ', 'KY', 'LR', 'PW', 'FM', 'MH']);

/** The unit to start with: the one kept from an earlier visit, else by the country of the reader's languages. */
export function defaultUnit(languages: readonly string[], storage: Storage | null): TemperatureUnit {
  const kept = readKept(storage, UNIT_KEY, ['F', 'C'] as const);
  if (kept) return kept;
  const region = languages[0]?.split('-').find((part, index) => index > 0 && /^[A-Z]{2}$/.test(part));
  return region !== undefined && FAHRENHEIT.has(region) ? 'F' : 'C';
}
