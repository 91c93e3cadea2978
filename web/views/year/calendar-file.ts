import { createEvents, type DateArray, type EventAttributes } from 'ics';
import type { CalendarTask } from '../../../analysis/answer/year.ts';
import { spokenLocale, t } from '../../../analysis/language/t.ts';
import { civilDate, dayNumber, isCivilDate, type DayNumber } from '../../../analysis/units/calendar.ts';
import { monthDayOf } from '../../format/month-day.ts';
import { foldByOctets } from './fold-lines.ts';
import { basisWords, goesOn, sourceNames } from './task-words.ts';

/** What a calendar of a place's year is made of. */
export interface CalendarFile {
  readonly tasks: readonly CalendarTask[];
  readonly typeId: string;
  readonly typeName: string;
  readonly placeLabel: string;
  /** Year of every event's first day; it comes again each year. */
  readonly startYear: number;
  /** When the file was made, milliseconds since 1970 UTC. */
  readonly madeAtMs: number;
  /** The winters were estimated from stations around. */
  readonly estimated: boolean;
  /** Name of the invented region; `null`: the place is real. */
  readonly inventedRegion: string | null;
}

/** Stands in every event: an entry made once outlives what it was made from. */
export const CALENDAR_CAUTION = t`Dates come from past winters and common practice, not from this winter’s weather: a forecast or warning in force goes first.`;

/** Ends with the language of the texts, as identifiers of products do. */
const PRODUCT = `-//citrus-winters//the year at a place//${spokenLocale().split('-')[0].toUpperCase()}`;

/** Tasks that say "not before": moved past a 29 February that a year lacks; all others are moved before it. */
const NOT_BEFORE: ReadonlySet<CalendarTask['id']> = new Set(['prune', 'cut-frozen', 'plant']);

/**
 * The tasks as an iCalendar file (RFC 5545): one all-day event each, repeated yearly. Uids stay the same from export to export, so
 * that a calendar takes a newer file as a change. Nothing tells where the place is but its label.
 * @throws Error when an event can't be written, which would be a fault of this program
 */
export function calendarFile(file: CalendarFile): string {
  const label = plainLine(file.placeLabel);
  const title = t`${file.typeName}, the year at ${label}`;
  const events = file.tasks.map((task, i): EventAttributes => {
    const first = firstDay(task, file.startYear);
    const what = plainLine(task.title);
    return {
      title: `${goesOn(task) ? t`${what}, from now on` : what} (${plainLine(file.typeName)})`,
      description: descriptionOf(task, { ...file, placeLabel: label }),
      start: dateArray(first),
      // The end is the day after the last.
      end: dateArray(lastDay(task, first) + 1),
      uid: `${task.id}-${i}-${file.typeId}-${labelHash(label)}@citrus-winters`,
      recurrenceRule: 'FREQ=YEARLY',
      ...{ timestamp: file.madeAtMs, transp: 'TRANSPARENT' },
    };
  });
  const { error, value } = createEvents(events, { productId: PRODUCT, calName: escapeText(title) });
  if (error || value === null) throw error ?? new Error('The calendar file could not be written.');
  return foldByOctets(value);
}

/** First day of a task in a year; a 29 February that the year lacks is moved to a neighbour that keeps the task cautious. */
function firstDay({ id, from }: CalendarTask, year: number): DayNumber {
  const { month, day } = monthDayOf(from);
  if (isCivilDate(year, month, day)) return dayNumber(year, month, day);
  return NOT_BEFORE.has(id) ? dayNumber(year, 3, 1) : dayNumber(year, 2, 28);
}

/** Last day of a task, the same year or, over the new year, the next. A span keeps its number of days in later years. */
function lastDay({ to, from }: CalendarTask, first: DayNumber): DayNumber {
  if (to === null) return first;
  const { month, day } = monthDayOf(to);
  const year = civilDate(first).year + (to < from ? 1 : 0);
  const last = isCivilDate(year, month, day) ? dayNumber(year, month, day) : dayNumber(year, 2, 28);
  return Math.max(first, last);
}

function descriptionOf(task: CalendarTask, file: CalendarFile): string {
  const sources = sourceNames(task);
  const estimated = file.estimated
    ? t`No thermometer stood at this place: its winters are estimated from stations around.`
    : '';
  const invented =
    file.inventedRegion === null
      ? ''
      : t`${plainLine(file.inventedRegion)} is an invented region: its weather is made up.`;
  return [
    plainLine(task.why),
    t`For ${file.typeName} at ${file.placeLabel}. Dates: ${basisWords(task)}.`,
    sources.length > 0 ? t`Sources: ${sources.join('; ')}.` : '',
    estimated,
    invented,
    CALENDAR_CAUTION,
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function dateArray(day: DayNumber): DateArray {
  const date = civilDate(day);
  return [date.year, date.month, date.day];
}

/** One line without control characters, which a calendar file must not hold. */
function plainLine(text: string): string {
  return text
    .replace(/\p{Cc}+/gu, ' ')
    .replace(/ {2,}/g, ' ')
    .trim();
}

/** The library escapes titles and descriptions, but not the calendar's name. */
function escapeText(text: string): string {
  return text.replace(/[\\;,]/g, '\\$&');
}

/** Eight hexadecimal digits of a label (FNV-1a over its UTF-16 units), so that two places' events differ. */
function labelHash(label: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < label.length; i++) hash = Math.imul(hash ^ label.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
