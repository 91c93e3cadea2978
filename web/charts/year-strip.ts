import { t } from '../../analysis/language/t.ts';
import { seasonDayOfDate, SEASON_DAYS } from '../../analysis/winter/season-day.ts';
import type { Hemisphere } from '../../analysis/winter/winter-year.ts';
import { monthDayOf } from '../format/month-day.ts';

/** How a mark looks: a step of the cold ramp 1-6, an open outline, or work that the record or the trade dates. */
export type StripLook = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 'window' | 'record' | 'practice';

/** A bar from one date through another, both `MM-DD` and within it. */
export interface StripBar {
  readonly from: string;
  readonly to: string;
  readonly look: StripLook;
}

/** A row of the strip. What it says stands in words too, since nobody should have to read dates off an axis. */
export interface StripRow {
  readonly key: string;
  readonly label: string;
  /** Small print under the label, `''` for none. */
  readonly detail: string;
  /** Starts a new group of rows. */
  readonly starts: boolean;
  /** Later ones lie on earlier ones. */
  readonly bars: readonly StripBar[];
  /** A thin line behind the bars: the record's earliest and latest. */
  readonly reach: { readonly from: string; readonly to: string } | null;
  /** Stretches underlined: where the marks are early or late. */
  readonly under: readonly { readonly from: string; readonly to: string }[];
  /** Single days with a mark of their own. */
  readonly days: readonly { readonly date: string; readonly look: 'record' | 'practice' }[];
  /** Written before the first and after the last mark. */
  readonly before: string;
  readonly after: string;
  /** The row in a sentence, for its tooltip and the table. */
  readonly words: string;
}

/** A piece of the axis, in days from the start of the year: a winter's year begins on 1 July, in the south on 1 January. */
export interface Piece {
  readonly start: number;
  /** The day after the last. */
  readonly end: number;
}

/** Day of a date on the axis, 0-365. */
export function axisDay(date: string, hemisphere: Hemisphere): number {
  const { month, day } = monthDayOf(date);
  return seasonDayOfDate(month, day, hemisphere);
}

/** Pieces of the axis that a span covers: two where it goes over the axis' end. */
export function piecesOf(from: string, to: string, hemisphere: Hemisphere): readonly Piece[] {
  const [start, last] = [axisDay(from, hemisphere), axisDay(to, hemisphere)];
  if (start <= last) return [{ start, end: last + 1 }];
  return [
    { start: 0, end: last + 1 },
    { start, end: SEASON_DAYS },
  ];
}

/** Months in the order of the axis, each with its first day on it and its number of days. */
export function axisMonths(
  hemisphere: Hemisphere,
): readonly { month: number; start: number; days: number }[] {
  const first = hemisphere === 'north' ? 7 : 1;
  const months = Array.from({ length: 12 }, (_, i) => ((first - 1 + i) % 12) + 1);
  const starts = months.map((month) => seasonDayOfDate(month, 1, hemisphere));
  return months.map((month, i) => ({
    month,
    start: starts[i],
    days: (starts[i + 1] ?? SEASON_DAYS) - starts[i],
  }));
}

/**
 * What a row covers, for the words at its ends; its reach only where there is nothing else. Where a bar goes over the axis'
 * end it starts after it ends. `null`: it has no mark.
 */
export function extentOf(row: StripRow, hemisphere: Hemisphere): Piece | null {
  const spans = [...row.bars, ...row.days.map(({ date }) => ({ from: date, to: date }))];
  if (spans.length === 0 && row.reach) spans.push(row.reach);
  if (spans.length === 0) return null;
  const pieces = spans.map(({ from, to }) => ({
    start: axisDay(from, hemisphere),
    end: axisDay(to, hemisphere) + 1,
  }));
  const over = pieces.find(({ start, end }) => start >= end);
  if (over) return over;
  return {
    start: Math.min(...pieces.map(({ start }) => start)),
    end: Math.max(...pieces.map(({ end }) => end)),
  };
}

/** Words placed beside a row's marks. */
export interface PlacedWords {
  readonly text: string;
  /** px from the left edge. */
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

const GAP_PX = 6;

/**
 * Where the words at a row's ends go: before and after it where they fit, otherwise both on the side that has the room, over the
 * marks where none has, between its pieces where a bar goes over the axis' end; in the middle of the axis where the row has no mark.
 * @param marks px where its marks start and end (see {@link extentOf}), `null`: none
 * @param axis px of the axis' start and end
 * @param widthOf px that a text takes
 */
export function placeWords(
  row: Pick<StripRow, 'before' | 'after'>,
  marks: readonly [number, number] | null,
  [left, right]: readonly [number, number],
  widthOf: (text: string) => number,
): readonly PlacedWords[] {
  const { before, after } = row;
  const both = before === '' || after === '' ? before + after : t`${before} to ${after}`;
  if (both === '') return [];
  if (!marks) return [{ text: both, x: (left + right) / 2, anchor: 'middle' }];
  const [startPx, endPx] = marks;
  const roomBefore = startPx - GAP_PX - left;
  const roomAfter = right - endPx - GAP_PX;
  const atStart = (text: string): PlacedWords => ({ text, x: startPx - GAP_PX, anchor: 'end' });
  const atEnd = (text: string): PlacedWords => ({ text, x: endPx + GAP_PX, anchor: 'start' });
  const fits = (text: string, room: number): boolean => text === '' || widthOf(text) <= room;
  // Over the axis' end and in again at its start: the room is between.
  if (startPx >= endPx && fits(both, startPx - endPx - 2 * GAP_PX)) return [atStart(both)];
  if (startPx < endPx && fits(before, roomBefore) && fits(after, roomAfter))
    return [before === '' ? null : atStart(before), after === '' ? null : atEnd(after)].filter(
      (words) => words !== null,
    );
  if (startPx >= endPx || !fits(both, Math.max(roomBefore, roomAfter)))
    return [{ text: both, x: right, anchor: 'end' }];
  return [roomAfter >= roomBefore ? atEnd(both) : atStart(both)];
}
