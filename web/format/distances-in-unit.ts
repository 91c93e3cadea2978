import { formatDistance, formatElevation } from './numbers.ts';
import type { TemperatureUnit } from './unit.ts';

const MEASURE = /(-?\d+(?:[.,]\d+)?) (km|m)\b/g;

/** A sentence that tells distances in km and heights in m, as `analysis` makes them: miles and feet beside °F. */
export function distancesInUnit(sentence: string, unit: TemperatureUnit): string {
  if (unit === 'C') return sentence;
  return sentence.replace(MEASURE, (_, written: string, measure: string) => {
    const value = Number(written.replace(',', '.'));
    return measure === 'km' ? formatDistance(value, unit) : formatElevation(value, unit);
  });
}
