import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { MISSING_TENTHS, type DailyRecord } from './daily-readings.ts';
import type { Planter } from './planted.ts';
import type { RegionalWeather } from './regional-weather.ts';
import { dayOf } from './timeline.ts';

/** Faults of single stations that no archive flag marks, by station id. Dates outside a shorter run plant nothing. */
const PLANS: Readonly<Record<string, (plant: Planter) => void>> = {
  ZZC00000217: (plant) => plant.replace('impossible value', 'tmin', dayOf('1976-02-11'), -817),
  ZZC00000211: (plant) => {
    spike(plant, '1969-05-24', -150);
    spike(plant, '2019-05-09', -150);
  },
  ZZC00000213: (plant) => {
    for (const date of ['2006-09-18', '2006-09-19'])
      plant.replace('equal bad days', 'tmin', dayOf(date), -172);
  },
  ZZC00000203: (plant) => stuck(plant, '2022-10-03', 14),
  ZZC00000215: (plant) => {
    for (const date of ['1994-03-02', '1994-03-03', '2020-11-17']) crossed(plant, date);
  },
  ZZA00000302: (plant) => {
    for (const date of ['2004-08-14', '2022-07-21'])
      plant.replace('zero for missing', 'tmin', dayOf(date), 0);
  },
  ZZA00000303: (plant) => plant.gap(dayOf('2001-07-01'), 800),
  ZZS00000404: (plant) => plant.gap(dayOf('1992-03-10'), 1100),
  ZZC00000218: (plant) => plant.gap(dayOf('1986-10-01'), 500),
  ZZC00000212: (plant) => plant.gap(dayOf('1974-01-15'), 380),
};

/** Plants the faults of one station, if it has any of its own. */
export function plantStationFaults(id: string, plant: Planter): void {
  PLANS[id]?.(plant);
}

/** Day of the timeline in the middle of the coldest two days of the whole region. */
export function greatestFreezeDay(weather: RegionalWeather): number {
  const { airC, timeline } = weather;
  let sum = 0;
  let coldest = Infinity;
  let at = 0;
  for (let i = 0; i < airC.length; i++) {
    sum += airC[i] - (i >= 48 ? airC[i - 48] : 0);
    if (i >= 48 && sum < coldest) [coldest, at] = [sum, i - 24];
  }
  return timeline.firstDay + Math.floor(at / 24);
}

/** The longest of the gaps: from five weeks before the region's greatest freeze to six weeks after it. */
export function plantFreezeGap(plant: Planter, weather: RegionalWeather): void {
  plant.gap(greatestFreezeDay(weather) - 35, 77, 'gap across the great freeze');
}

/** Notes the lowest minimum near the greatest freeze: it is right, and cleaning must not take it out. */
export function noteGoodExtreme(plant: Planter, record: DailyRecord, weather: RegionalWeather): void {
  const middle = greatestFreezeDay(weather);
  let lowest = MISSING_TENTHS;
  let at = 0;
  for (let date = middle - 3; date <= middle + 4; date++) {
    const value = plant.value('tmin', date);
    const flagged = record.tminFlag[date - record.firstDay];
    if (value === MISSING_TENTHS || flagged || (lowest !== MISSING_TENTHS && value >= lowest)) continue;
    [lowest, at] = [value, date];
  }
  if (lowest === MISSING_TENTHS) return;
  const date = formatIsoDay(at);
  plant.note({
    kind: 'good extreme',
    element: 'tmin',
    from: date,
    to: date,
    stored_c: lowest / 10,
    true_c: lowest / 10,
  });
}

function spike(plant: Planter, date: string, byTenths: number): void {
  plant.replace('spike', 'tmin', dayOf(date), plant.value('tmin', dayOf(date)) + byTenths);
}

function stuck(plant: Planter, date: string, days: number): void {
  const first = dayOf(date);
  for (const element of ['tmin', 'tmax'] as const) {
    const value = plant.value(element, first);
    for (let i = 1; i < days; i++) plant.replace('stuck values', element, first + i, value);
  }
}

function crossed(plant: Planter, date: string): void {
  const [tmin, tmax] = [plant.value('tmin', dayOf(date)), plant.value('tmax', dayOf(date))];
  plant.replace('maximum below minimum', 'tmin', dayOf(date), tmax);
  plant.replace('maximum below minimum', 'tmax', dayOf(date), tmin);
}
