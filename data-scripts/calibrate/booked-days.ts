import type { DailySeries } from '../../analysis/records/series.ts';
import type { AirportRecord } from './read-airports.ts';

/** A day is booked when so many of its hours have a reading. */
const HOURS_MIN = 20;

/**
 * The daily record an airport would keep: lowest and highest reading, and mean wind, from midnight to midnight of local
 * standard time. The minimum of a day can so fall into the evening that belongs to the next night.
 */
export function bookedDays({ airport, series }: AirportRecord): DailySeries {
  const { timeUtcH, tempC, windMs } = series;
  const dayOf = (k: number): number => Math.floor((timeUtcH[k] + airport.standardH) / 24);
  const firstDay = dayOf(0);
  const count = dayOf(timeUtcH.length - 1) - firstDay + 1;
  const tminC = new Float64Array(count).fill(NaN);
  const tmaxC = new Float64Array(count).fill(NaN);
  const wind = new Float64Array(count);
  const windReadings = new Int32Array(count);
  const hours = new Int32Array(count);
  let lastHour = NaN;
  for (let k = 0; k < timeUtcH.length; k++) {
    const i = dayOf(k) - firstDay;
    if (!(tempC[k] >= tminC[i])) tminC[i] = tempC[k];
    if (!(tempC[k] <= tmaxC[i])) tmaxC[i] = tempC[k];
    if (!Number.isNaN(windMs[k])) {
      wind[i] += windMs[k];
      windReadings[i]++;
    }
    const hour = Math.floor(timeUtcH[k]);
    if (hour !== lastHour) hours[i]++;
    lastHour = hour;
  }
  for (let i = 0; i < count; i++) {
    if (hours[i] < HOURS_MIN) tminC[i] = tmaxC[i] = NaN;
  }
  const windMean = wind.map((sum, i) => (windReadings[i] >= HOURS_MIN ? sum / windReadings[i] : NaN));
  return { station: airport.station, firstDay, tminC, tmaxC, windMs: windMean };
}
