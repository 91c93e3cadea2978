import { t } from '../../language/t.ts';
import { quantileType7 } from '../../math/quantile.ts';
import type { DayNumber } from '../../units/calendar.ts';
import type { SpotReading } from './spot-reading.ts';
import type { TextRow } from './text-rows.ts';

/** A value with its calendar day and time, in the order of the text. */
export interface LoggedValue {
  readonly day: DayNumber;
  /** Hours since midnight, NaN where there is none. */
  readonly hour: number;
  readonly value: number;
  readonly maximum: number | null;
  readonly row: TextRow;
}

/** A logger's night counts with at least this share of its usual readings, and one in the hours before and after dawn. */
const SHARE_NEEDED = 0.6;
const DAWN_H = [3, 9] as const;

/**
 * One reading a night. A diary has one line a date: its minimum is that morning's, whenever it was read. A logger has
 * several with times: those from noon on belong to the next morning, and the lowest is the night's minimum; its day's
 * highest is the maximum.
 */
export function nightsFromLog(values: readonly LoggedValue[]): {
  readings: SpotReading[];
  perNight: number;
  notes: string[];
} {
  const timed = values.filter(({ hour }) => !Number.isNaN(hour));
  const dates = new Set(timed.map(({ day }) => day));
  const isLog = timed.length > values.length / 2 && timed.length >= 2 * dates.size;
  return isLog ? fromLogger(timed) : fromDiary(values);
}

function fromDiary(values: readonly LoggedValue[]): ReturnType<typeof nightsFromLog> {
  const byDay = new Map<DayNumber, LoggedValue>();
  let repeats = 0;
  for (const value of values) {
    const known = byDay.get(value.day);
    if (known) repeats += 1;
    if (!known || value.value < known.value) byDay.set(value.day, value);
  }
  const readings = [...byDay.values()].map(({ day, value, maximum, row }) => ({
    day,
    minimum: value,
    maximum,
    line: row.line,
  }));
  const notes =
    repeats === 0 ? [] : [t`${repeats} more lines have a date that stands before: the lowest counts.`];
  return { readings: readings.sort((a, b) => a.day - b.day), perNight: 1, notes };
}

function fromLogger(values: readonly LoggedValue[]): ReturnType<typeof nightsFromLog> {
  const nights = new Map<DayNumber, LoggedValue[]>();
  const warmest = new Map<DayNumber, number>();
  for (const value of values) {
    const morning = value.hour >= 12 ? value.day + 1 : value.day;
    const night = nights.get(morning);
    if (night) night.push(value);
    else nights.set(morning, [value]);
    warmest.set(value.day, Math.max(warmest.get(value.day) ?? -Infinity, value.maximum ?? value.value));
  }
  const usual = quantileType7(
    [...nights.values()].map((night) => night.length),
    0.5,
  );
  const whole = [...nights].filter(
    ([, night]) =>
      night.length >= SHARE_NEEDED * usual &&
      night.some(({ hour }) => hour >= DAWN_H[0] && hour <= DAWN_H[1]),
  );
  const readings = whole.map(([day, night]) => {
    const lowest = night.reduce((a, b) => (b.value < a.value ? b : a));
    return { day, minimum: lowest.value, maximum: warmest.get(day) ?? null, line: lowest.row.line };
  });
  const partial = nights.size - whole.length;
  const notes = [
    t`${values.length} readings at about ${Math.round(usual)} a night were taken together: each night's lowest, noon to noon.`,
  ];
  if (partial > 0) {
    notes.push(t`${partial} nights with too few readings, or none near dawn, were left out.`);
  }
  return { readings: readings.sort((a, b) => a.day - b.day), perNight: Math.round(usual), notes };
}
