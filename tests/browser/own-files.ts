import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { civilDate, dayNumber, dayOfYear } from '../../analysis/units/calendar.ts';

/** Two invented stations in mid-ocean; every reading below is made up. */
export const INVENTED_STATIONS = [
  { id: 'ZZ000000001', name: 'Invented East', lat: 31.05, lon: -42.05, elevationM: 12, seed: 41, colderC: 0 },
  {
    id: 'ZZ000000002',
    name: 'Invented West',
    lat: 31.12,
    lon: -42.2,
    elevationM: 60,
    seed: 42,
    colderC: 1.3,
  },
] as const;

type InventedStation = (typeof INVENTED_STATIONS)[number];

const [FIRST_YEAR, LAST_YEAR] = [1960, 2021];

/** A mild year with cold outbreaks that both stations share: each day's maximum and minimum in tenths of °C. */
function invented({ seed, colderC }: InventedStation): { day: number; max: number; min: number }[] {
  const [shared, own] = [seededRandom(7), seededRandom(seed)];
  const days: { day: number; max: number; min: number }[] = [];
  let outbreakC = 0;
  for (let day = dayNumber(FIRST_YEAR, 1, 1); day <= dayNumber(LAST_YEAR, 12, 31); day++) {
    const seasonC = 13 - 9 * Math.cos((2 * Math.PI * (dayOfYear(day) - 20)) / 365.25);
    outbreakC = shared.uniform() < 0.03 ? 6 + 8 * shared.uniform() : 0.6 * outbreakC;
    const min = seasonC - colderC - outbreakC + 2.5 * shared.normal() + 0.6 * own.normal();
    days.push({ day, min: Math.round(min * 10), max: Math.round((min + 8 + 3 * shared.uniform()) * 10) });
  }
  return days;
}

/** The archive's fixed-width lines, one a month and element. */
export function dlyText(station: InventedStation): string {
  const months = new Map<string, number[]>();
  for (const { day, max, min } of invented(station)) {
    const { year, month, day: of } = civilDate(day);
    for (const [element, value] of [
      ['TMAX', max],
      ['TMIN', min],
    ] as const) {
      const key = `${station.id}${year}${String(month).padStart(2, '0')}${element}`;
      const values = months.get(key) ?? new Array<number>(31).fill(-9999);
      values[of - 1] = value;
      months.set(key, values);
    }
  }
  return [...months]
    .map(([key, values]) => `${key}${values.map((value) => `${String(value).padStart(5)}   `).join('')}\n`)
    .join('');
}

/** A table with the day first, as spreadsheets write it. */
export function dayFirstText(station: InventedStation): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  const lines = invented(station).map(({ day, max, min }) => {
    const { year, month, day: of } = civilDate(day);
    return `${two(of)}/${two(month)}/${year},${(max / 10).toFixed(1)},${(min / 10).toFixed(1)}`;
  });
  return `date,tmax,tmin\n${lines.join('\n')}\n`;
}
