import type { HarvestYear } from '../../analysis/answer/year.ts';
import { monthDayOf } from '../format/month-day.ts';

export type HarvestHalf = HarvestYear['halves'][number];

/** Step of the cold ramp for a chance, as the freeze bands have them: from 1 in 10 on 2, from 1 in 4 on 3, half 4, 3 in 4 5, 9 in 10 6. */
export function chanceStep(chance: number): 1 | 2 | 3 | 4 | 5 | 6 {
  if (chance >= 0.9) return 6;
  if (chance >= 0.75) return 5;
  if (chance >= 0.5) return 4;
  if (chance >= 0.25) return 3;
  return chance >= 0.1 ? 2 : 1;
}

/** Top of the axis, a share: the highest range's end, rounded up to a fifth, at least a fifth. */
export function lossTop(halves: readonly HarvestHalf[]): number {
  const highest = Math.max(0.2, ...halves.map(({ lost, high }) => Math.max(lost, high)));
  return Math.min(1, Math.ceil(highest * 5 - 1e-9) / 5);
}

/** Shares to mark on the axis, above 0. */
export function lossTicks(top: number): readonly number[] {
  const step = top <= 0.4 ? 0.1 : top <= 0.6 ? 0.2 : 0.25;
  return Array.from({ length: Math.floor(top / step + 1e-9) }, (_, i) => Number(((i + 1) * step).toFixed(2)));
}

/** Where a date lies among the halves: 0 at the first's start, 1 at its end, and so on; `null` outside them. */
export function placeInHalves(date: string, halves: readonly HarvestHalf[]): number | null {
  const at = halves.findIndex(({ from, to }) => from <= date && date <= to);
  if (at < 0) return null;
  const [first, last, day] = [halves[at].from, halves[at].to, date].map((text) => monthDayOf(text).day);
  return at + (day - first + 1) / (last - first + 1);
}

/** Halves whose chance is written on the mark: all where there is room, otherwise every so many and the last. */
export function labelledHalves(count: number, stepPx: number, labelPx = 30): ReadonlySet<number> {
  const every = Math.max(1, Math.ceil(labelPx / Math.max(1, stepPx)));
  return new Set(Array.from({ length: count }, (_, i) => i).filter((i) => (count - 1 - i) % every === 0));
}

/** Height of the letters of a figure in px, and how far it stands over what it tells of. */
const FIGURE_PX = 11;
const FIGURE_GAP_PX = 5;

/** Baseline of the figure over a mark whose top is at `markTopPx`: over the line of the limit where the two would cross. */
export function figureBaselinePx(markTopPx: number, limitPx: number): number {
  const over = markTopPx - FIGURE_GAP_PX;
  return limitPx > over - FIGURE_PX && limitPx < over + 3 ? limitPx - 4 : over;
}

/** A half month as the pick-by line meets it: middle of its mark, baseline of its figure, and whether that is written. */
export interface MarkMet {
  readonly middlePx: number;
  readonly baselinePx: number;
  readonly labelled: boolean;
}

/** How far down the line of a day runs: to the ground, or over the figures and ranges that it would cross. */
export function pickLineEndPx(atPx: number, marks: readonly MarkMet[], groundPx: number): number {
  const crossed = marks.filter(({ middlePx, labelled }) => Math.abs(middlePx - atPx) < (labelled ? 16 : 5));
  return Math.min(groundPx, ...crossed.map(({ baselinePx }) => baselinePx - FIGURE_PX - 3));
}
