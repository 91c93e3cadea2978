import {
  civilDate,
  dayNumber,
  dayOfYear,
  parseIsoDay,
  type DayNumber,
} from '../../analysis/units/calendar.ts';

/** Local standard time of the invented region is this many hours behind UTC (the meridian of 45 W). */
export const HOURS_BEHIND_UTC = 3;

/** Hours to add to local standard time for solar time at the region's middle, 42.1 W. */
const SOLAR_SHIFT_H = 45 / 15 - 42.1 / 15;

const LATITUDE_RAD = (31.1 * Math.PI) / 180;

/** The hours a weather run covers: hour `i` is `i` hours after local midnight at the start of `firstDay`. */
export interface Timeline {
  readonly firstDay: DayNumber;
  readonly days: number;
  readonly hours: number;
  /** Day of the year of each day, 1-366. */
  readonly dayOfYear: Uint16Array;
  /** Winter each day belongs to (July to June, labelled by the year of its January). */
  readonly winter: Uint16Array;
}

/** The timeline of whole winters: from 1 July of `firstWinter - 1` to 30 June of `lastWinter`. */
export function timelineOf(firstWinter: number, lastWinter: number): Timeline {
  const firstDay = dayNumber(firstWinter - 1, 7, 1);
  const days = dayNumber(lastWinter, 7, 1) - firstDay;
  const ofYear = new Uint16Array(days);
  const winter = new Uint16Array(days);
  for (let i = 0; i < days; i++) {
    const { year, month } = civilDate(firstDay + i);
    ofYear[i] = dayOfYear(firstDay + i);
    winter[i] = month >= 7 ? year + 1 : year;
  }
  return { firstDay, days, hours: days * 24, dayOfYear: ofYear, winter };
}

/** Sine of the sun's height at each hour of each day of the year (0 below the horizon): index `(dayOfYear - 1) * 24 + hour`. */
export function sunTable(): Float32Array {
  const table = new Float32Array(366 * 24);
  for (let day = 1; day <= 366; day++) {
    const declination = 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39);
    for (let hour = 0; hour < 24; hour++) {
      const angle = ((hour + SOLAR_SHIFT_H - 12) * Math.PI) / 12;
      const height =
        Math.sin(LATITUDE_RAD) * Math.sin(declination) +
        Math.cos(LATITUDE_RAD) * Math.cos(declination) * Math.cos(angle);
      table[(day - 1) * 24 + hour] = Math.max(0, height);
    }
  }
  return table;
}

/** How wintry a day of the year is: 1 on 22 January, 0 half a year later, a smooth swing between. */
export function winterness(dayOfTheYear: number): number {
  return 0.5 + 0.5 * Math.cos((2 * Math.PI * (dayOfTheYear - 22)) / 365.25);
}

/** Day number of a date that this folder's own tables give as YYYY-MM-DD; a date that doesn't exist is a mistake in them. */
export function dayOf(date: string): DayNumber {
  const day = parseIsoDay(date);
  if (day === null) throw new RangeError(`${date} is not a date`);
  return day;
}
