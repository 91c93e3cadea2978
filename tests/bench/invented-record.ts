import { seededRandom } from '../../analysis/math/seeded-random.ts';
import type { DailySeries } from '../../analysis/records/series.ts';
import { dayNumber, dayOfYear } from '../../analysis/units/calendar.ts';

/** A made-up daily record of whole years from 1 July 1960, 2 % of its values missing: the same for the same seed. */
export function inventedSeries(years: number, seed: number): DailySeries {
  const random = seededRandom(seed);
  const firstDay = dayNumber(1960, 7, 1);
  const length = dayNumber(1960 + years, 7, 1) - firstDay;
  const tminC = new Float64Array(length);
  const tmaxC = new Float64Array(length);
  let weather = 0;
  for (let i = 0; i < length; i++) {
    weather = 0.7 * weather + 2.8 * random.normal();
    const season = 13 - 9 * Math.cos((2 * Math.PI * (dayOfYear(firstDay + i) - 20)) / 365.25);
    tminC[i] = random.uniform() < 0.02 ? NaN : Math.round(10 * (season + weather)) / 10;
    tmaxC[i] =
      random.uniform() < 0.02 ? NaN : Math.round(10 * (season + weather + 7 + 6 * random.uniform())) / 10;
  }
  const station = { id: `ZZ${seed}`, name: 'Invented', lat: 31, lon: -42, elevationM: 5 };
  return { station, firstDay, tminC, tmaxC, windMs: new Float64Array(length).fill(NaN) };
}
