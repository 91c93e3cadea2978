import type { GainSpread, Spread } from '../winter/gain-spread.ts';
import type { KindEstimate, OffsetEstimate } from './thermometer/estimate-offset.ts';

/** An offset measured on one kind of night: centre with its 90 % interval, °C, and the nights behind it. */
export interface MeasuredKind {
  readonly spread: Spread;
  readonly nights: number;
}

/** A spot's offset as an own thermometer measured it; `null` for a kind of night with too few readings. */
export interface MeasuredOffset {
  readonly calm: MeasuredKind | null;
  readonly windy: MeasuredKind | null;
}

/** From so many nights of a kind on, the measured offset stands alone (handbook, microsites 1: "at least 10 calm clear nights"). */
export const NIGHTS_TO_STAND_ALONE = 10;

/**
 * Half the range a table can have at best, °C: the handbook's error of a place against its station is 2 to 3 °F, so no table
 * knows a spot better than 2 °F, not even the open lawn's 0.
 */
const TABLE_HALF_RANGE_MIN_C = 2 / 1.8;
/** Half a 90 % interval in standard errors. */
const NORMAL_95 = 1.6449;

/** What the estimate hands on to the answer; `null` where nothing was measured. */
export function measuredOffset(estimate: OffsetEstimate): MeasuredOffset | null {
  const kind = (found: KindEstimate | null): MeasuredKind | null =>
    found && { spread: found.spread, nights: found.nights };
  const measured = { calm: kind(estimate.calm), windy: kind(estimate.windy) };
  return measured.calm || measured.windy ? measured : null;
}

/**
 * The table's gain of a spot with what was measured there. Both are weighed by the inverse square of their standard errors
 * (half the range / 1.645), and the table's weight falls evenly with each night, to nothing at
 * {@link NIGHTS_TO_STAND_ALONE}: from then on the measured offset stands alone. A kind of night without readings keeps the
 * table. A measured offset may go beyond the table's caps: those keep guesses from adding up, and a thermometer measures
 * their sum.
 */
export function blendMeasured(table: GainSpread, measured: MeasuredOffset): GainSpread {
  return {
    calm: blendKind(table.calm, measured.calm),
    windy: blendKind(table.windy, measured.windy),
  };
}

function blendKind(table: Spread, measured: MeasuredKind | null): Spread {
  if (!measured) return table;
  const left = 1 - measured.nights / NIGHTS_TO_STAND_ALONE;
  if (left <= 0) return measured.spread;
  const tableError = Math.max((table.highC - table.lowC) / 2, TABLE_HALF_RANGE_MIN_C) / NORMAL_95;
  const measuredError = Math.max((measured.spread.highC - measured.spread.lowC) / 2, 0.05) / NORMAL_95;
  const [ofTable, ofMeasured] = [left / tableError ** 2, 1 / measuredError ** 2];
  const centreC = (ofTable * table.centreC + ofMeasured * measured.spread.centreC) / (ofTable + ofMeasured);
  const half = NORMAL_95 / Math.sqrt(ofTable + ofMeasured);
  return { lowC: centreC - half, centreC, highC: centreC + half };
}
