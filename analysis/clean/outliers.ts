import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import type { DayNumber } from '../units/calendar.ts';
import type { DayTable } from './day-table.ts';
import { shown, type Findings } from './findings.ts';
import { lowEvidence, type LowEvidence } from './low-evidence.ts';
import type { Normals } from './season-normals.ts';

/**
 * Asks neighbouring stations about a minimum: true if they had a night as cold for their season, false if not, null if
 * they can't tell.
 */
export type NeighbourCheck = (day: DayNumber, valueC: number) => boolean | null;

/** Passes over the record: a bad value can hide the one beside it. */
const PASSES = 2;
/** Rise (°C, and spreads of a daily change by length of the run) from which a low run is a spike. */
const SPIKE_C = 8;
const SPIKE_SPREADS = [NaN, 4.5, 6.5, 8, 10];
/** The maxima beside a spike must be this many spreads too warm for it. */
const SPIKE_RANGE = 3;
/** A rise beyond any night's (°C), with maxima this far too warm, needs fewer spreads of a daily change. */
const HUGE_SPIKE_C = 15;
const HUGE_SPIKE = 3.5;
const HUGE_SPIKE_RANGE = 6;
const HUGE_UNSUPPORTED_BY = 2;
/** Beside a gap only one side speaks: then the rise and the distance from the season must both be plain. */
const ONE_SIDED_SPIKE = 8;
const ONE_SIDED_SEASON = 5;
/** Spreads below the season from which a value falls if nothing supports it, and by how much it must outdo the support. */
const SEASON_ALONE = 5.5;
const UNSUPPORTED_BY = 4;
/** Spreads below the season from which weaker lack of support is enough, and from which none is asked for. */
const SEASON_FAR = 7;
const FAR_UNSUPPORTED_BY = 3;
const SEASON_IMPOSSIBLE = 11;
/** Below these a value is kept without a word. */
const DOUBT_SPIKE_C = 6;
const DOUBT_SPIKE = [NaN, 3, 4, 5, 6];
const DOUBT_RANGE = 2.5;
const DOUBT_RANGE_ALONE = 5;
const DOUBT_DEEP_C = 12;
const DOUBT_DEEP = 3.5;
const DOUBT_DEEP_RANGE = 1.5;
const DOUBT_SEASON = 5;
const ZERO_F_IN_C = -160 / 9;

/** Drops minima that can't be true, and marks those that may not be. */
export function judgeMinima(
  table: DayTable,
  normals: Normals,
  findings: Findings,
  neighbours: NeighbourCheck | null,
): void {
  const { tminC, firstDay } = table;
  for (let pass = 1, changed = true; pass <= PASSES && changed; pass += 1) {
    changed = false;
    const doubts: (() => void)[] = [];
    const verdicts: { at: number; reason: string; doubt: boolean; detail: string }[] = [];
    for (let at = 0; at < table.length; at += 1) {
      const value = tminC[at]!;
      if (Number.isNaN(value) || !isWorthALook(table, normals, at)) continue;
      const evidence = lowEvidence(table, normals, at);
      const verdict = judge(value, evidence);
      if (verdict === null) continue;
      const asked = neighbours?.(firstDay + at, value) ?? null;
      if (asked === true) continue;
      verdicts.push({ at, ...verdict, doubt: verdict.doubt && asked !== false, detail: detailOf(evidence) });
    }
    for (const { at, reason, doubt, detail } of verdicts) {
      const day = firstDay + at;
      const sentence = t`tmin ${shown(tminC[at]!, day)} ${detail}.`;
      if (doubt) {
        const value = tminC[at]!;
        doubts.push(() => findings.doubt(day, 'tmin', value, reason, sentence));
        continue;
      }
      findings.drop(day, 'tmin', tminC[at]!, reason, sentence);
      tminC[at] = NaN;
      changed = true;
    }
    if (!changed || pass === PASSES) doubts.forEach((doubt) => doubt());
  }
}

/** Days on each side within which the sides of a run can lie. */
const SIDES_WITHIN_DAYS = 5;

/**
 * Most days are plainly fine and need no weighing: they are usual for the season, and no day before or no day after is
 * clearly warmer.
 */
function isWorthALook(table: DayTable, normals: Normals, at: number): boolean {
  const { tminC } = table;
  const value = tminC[at]!;
  const day = table.firstDay + at;
  const usual = normals.tmin.of(day);
  if (value < usual.median - 3 * usual.spreadBelow) return true;
  const change = normals.tminChange.of(day);
  const needed = value + Math.max(5, 2 * Math.min(change.spreadBelow, change.spreadAbove));
  return (
    anyAbove(tminC, at - SIDES_WITHIN_DAYS, at, needed) &&
    anyAbove(tminC, at + 1, at + 1 + SIDES_WITHIN_DAYS, needed)
  );
}

function anyAbove(values: Float64Array, from: number, to: number, limit: number): boolean {
  for (let at = Math.max(0, from); at < to && at < values.length; at += 1)
    if (values[at]! >= limit) return true;
  return false;
}

function judge(value: number, e: LowEvidence): { reason: string; doubt: boolean } | null {
  const rangeUnknown = Number.isNaN(e.range);
  const lack = e.below - (Number.isNaN(e.support) ? 0 : e.support);
  const isZero = Math.abs(value) < 1e-9 || Math.abs(value - ZERO_F_IN_C) < 0.03;
  if (e.oneSided) {
    const isPlain = e.spike >= ONE_SIDED_SPIKE && e.below >= ONE_SIDED_SEASON;
    if (isPlain && (rangeUnknown || e.range >= SPIKE_RANGE)) return { reason: 'spike', doubt: false };
  } else {
    if (isZero && e.spikeC >= 5 && e.spike >= 3 && (rangeUnknown || e.range >= DOUBT_RANGE) && lack >= 1) {
      return { reason: 'zero for missing', doubt: false };
    }
    const needed = e.runEqual && e.runDays <= 2 ? SPIKE_SPREADS[1]! : SPIKE_SPREADS[e.runDays]!;
    const againstMaxima = rangeUnknown ? lack >= 2 : e.range >= SPIKE_RANGE;
    if (e.spikeC >= SPIKE_C && e.spike >= needed && againstMaxima) return { reason: 'spike', doubt: false };
    const isHuge = e.spikeC >= HUGE_SPIKE_C && e.spike >= HUGE_SPIKE && e.range >= HUGE_SPIKE_RANGE;
    if (isHuge && lack >= HUGE_UNSUPPORTED_BY) return { reason: 'spike', doubt: false };
  }
  if (e.below >= SEASON_IMPOSSIBLE) return { reason: 'out of season', doubt: false };
  if (e.below >= SEASON_FAR && lack >= FAR_UNSUPPORTED_BY) return { reason: 'out of season', doubt: false };
  if (e.below >= SEASON_ALONE && lack >= UNSUPPORTED_BY) return { reason: 'out of season', doubt: false };
  if (
    e.spikeC >= DOUBT_SPIKE_C &&
    e.spike >= DOUBT_SPIKE[e.runDays]! &&
    (rangeUnknown || e.range >= DOUBT_RANGE)
  ) {
    return { reason: 'spike', doubt: true };
  }
  if (e.spikeC >= SPIKE_C && e.range >= DOUBT_RANGE_ALONE) return { reason: 'spike', doubt: true };
  if (e.spikeC >= DOUBT_DEEP_C && e.spike >= DOUBT_DEEP && e.range >= DOUBT_DEEP_RANGE && e.runDays === 1) {
    return { reason: 'spike', doubt: true };
  }
  if (e.below >= DOUBT_SEASON && lack >= DOUBT_RANGE) return { reason: 'out of season', doubt: true };
  return null;
}

function detailOf(e: LowEvidence): string {
  const parts = [t`lies ${sayFigure(e.below, 1)} spreads below the season`];
  if (e.spikeC > 0) {
    parts.push(
      t`${sayFigure(e.spikeC, 1)} °C (${sayFigure(e.spike, 1)} spreads) below both sides of ${e.runDays} day(s)`,
    );
  }
  if (!Number.isNaN(e.range)) parts.push(t`its maxima are ${sayFigure(e.range, 1)} spreads too warm for it`);
  return parts.join(', ');
}

/** Maxima: rise or fall from both sides (°C and spreads) from which a single day is a spike, and distance from the season. */
const TMAX_SPIKE_C = 14;
const TMAX_SPIKE = 5.5;
const TMAX_SEASON = 6;

/** Drops maxima, and minima on the warm side, that stand out alone from the days around them and from the season. */
export function judgeWarmSide(table: DayTable, normals: Normals, findings: Findings): void {
  for (const element of ['tmax', 'tmin'] as const) {
    const values = element === 'tmax' ? table.tmaxC : table.tminC;
    const changes = element === 'tmax' ? normals.tmaxChange : normals.tminChange;
    for (let at = 1; at < table.length - 1; at += 1) {
      const value = values[at]!;
      const [up, down] = [value - values[at - 1]!, value - values[at + 1]!];
      const day = table.firstDay + at;
      const score = normals[element].score(day, value);
      // The cold side of minima has rules of its own above.
      if (element === 'tmin' && !(score > 0)) continue;
      const alone = Math.sign(up) === Math.sign(down) ? Math.min(Math.abs(up), Math.abs(down)) : 0;
      const change = changes.of(day);
      const spike = alone / Math.max(change.spreadBelow, change.spreadAbove);
      const isSpike = alone >= TMAX_SPIKE_C && spike >= TMAX_SPIKE && Math.abs(score) >= 2;
      const isFar = Math.abs(score) >= TMAX_SEASON && (spike >= 3 || Number.isNaN(alone));
      if (!isSpike && !isFar) continue;
      const detail = t`${element} ${shown(value, day)} lies ${sayFigure(Math.abs(score), 1)} spreads off the season and ${sayFigure(alone, 1)} °C off both neighbours.`;
      findings.drop(day, element, value, isSpike ? 'spike' : 'out of season', detail);
      values[at] = NaN;
    }
  }
}
