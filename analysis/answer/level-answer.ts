import { chanceWithin } from '../extremes/chance-within.ts';
import { countedPeriod, countHits, type Counted } from '../extremes/counted.ts';
import { estimatedCount } from '../extremes/estimated-count.ts';
import { averagedChance } from '../extremes/interpolation-error.ts';
import { headline } from '../extremes/headline.ts';
import { recentCount } from '../extremes/trend.ts';
import { windowShare } from '../extremes/window-share.ts';
import { chanceAtOrBelow } from '../extremes/winter-minimum.ts';
import { MISSING_HUNDREDTHS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { Level } from '../tree/levels.ts';
import { penaltiesAt, totalPenaltyC, type TreeState } from '../tree/penalties.ts';
import { toHundredths } from '../units/temperature.ts';
import type { Gains } from '../winter/winter-minima.ts';
import type { LevelAnswer, PeriodRange } from './assessment.ts';
import type { FitBook, HoursBook } from './fit-book.ts';

/** Nights with a hit in complete winters for a number of hours and a limit in °C, `null` where nights aren't at hand. */
export type HitNightCount = (hours: number, limitC: number) => number | null;

export interface LevelQuestion {
  readonly type: CitrusType;
  readonly level: Level;
  readonly tree: TreeState;
  readonly gains: Gains;
  readonly years: number;
}

/** Threshold plus penalties, °C in whole hundredths: a night hits when its sustained cold with gain is at or below. */
export function limitC(
  { type, level, tree }: Omit<LevelQuestion, 'gains' | 'years'>,
  thresholdC?: number,
): number {
  const own = thresholdC ?? type.thresholds[level].centreC;
  return toHundredths(own + totalPenaltyC(penaltiesAt(level, type, tree))) / 100;
}

/** The answer for one type and level at one place. */
export function answerLevel(
  question: LevelQuestion,
  winters: WinterTable,
  book: FitBook,
  durationMinima: Int16Array,
  hitNights: HitNightCount,
): LevelAnswer {
  const { type, level, tree, gains, years } = question;
  const threshold = type.thresholds[level];
  const limit = limitC(question);
  const hours = book.forHours(threshold.hours);
  const n = hours.valuesC.length;
  const hits = hitWinters(winters, hours.minima, limit);
  const counted = countAt(hours, limit);
  const fitted = hours.fit?.returnPeriod(limit) ?? null;
  const chance = hours.fit?.chanceWithin(limit, years) ?? countedChance(counted, years);
  const longHits = hitWinters(winters, durationMinima, limit).complete.length;
  const nights = n === 0 ? null : hitNights(threshold.hours, limit);
  return {
    level,
    threshold_c: threshold.centreC,
    hours: threshold.hours,
    penalties_c: Object.fromEntries(
      penaltiesAt(level, type, tree).map(({ cause, centreC }) => [cause, centreC]),
    ),
    gain_calm_c: gains.calmC,
    gain_windy_c: gains.windyC,
    counted: {
      hits: counted.hits,
      winters: n,
      ...finite(counted),
      hit_winters: hits.complete,
      hit_incomplete: hits.incomplete,
    },
    fitted: fitted && finite(fitted),
    headline: headline(counted, fitted, n),
    if_threshold: {
      low: { threshold_c: threshold.lowC, period: headlinePeriod(hours, limitC(question, threshold.lowC)) },
      high: {
        threshold_c: threshold.highC,
        period: headlinePeriod(hours, limitC(question, threshold.highC)),
      },
    },
    with_duration: { hits: longHits, period: longHits === 0 ? null : n / longHits },
    chance_in_years: { years, ...chance },
    nights_per_winter: nights === null ? null : nights / n,
    beside: besideCount(winters, hours, limit, years),
  };
}

function besideCount(
  winters: WinterTable,
  { valuesC, likelihood, interpolation }: HoursBook,
  limit: number,
  years: number,
): LevelAnswer['beside'] {
  const labels = winters.winter.filter((_, w) => winters.complete[w] === 1);
  const hits = Array.from(valuesC, (value) => toHundredths(value) <= toHundredths(limit));
  const { share, windows } = windowShare(labels, hits, Math.round(years));
  const recent = recentCount(labels, valuesC, limit);
  const coldShare = 1 - valuesC.filter(Number.isNaN).length / valuesC.length;
  const byLikelihood = (levelC: number): number => (likelihood ? chanceAtOrBelow(levelC, likelihood) : 0);
  const chance = interpolation ? averagedChance(byLikelihood, limit, interpolation) : byLikelihood(limit);
  const likelihoodPeriod = 1 / (coldShare * chance);
  return {
    likelihood_period: Number.isFinite(likelihoodPeriod) ? likelihoodPeriod : null,
    window_share: share,
    windows,
    recent: recent && {
      hits: recent.hits,
      winters: recent.winters,
      period: finite(recent).period,
      first: recent.firstWinter,
      last: recent.lastWinter,
    },
  };
}

/** The count with its range: at a place between stations also for what its winters may be off. */
export function countAt(
  { valuesC, interpolation }: Pick<HoursBook, 'valuesC' | 'interpolation'>,
  limit: number,
): Counted {
  return interpolation && valuesC.length > 0
    ? estimatedCount(valuesC, limit, interpolation)
    : countedPeriod(countHits(valuesC, limit), valuesC.length);
}

function headlinePeriod(book: HoursBook, limit: number): number | null {
  const { valuesC, fit } = book;
  const counted = countAt(book, limit);
  return headline(counted, fit?.returnPeriod(limit) ?? null, valuesC.length).period;
}

/** Without a fit the chance within some years comes from the count, and from nothing when no winter is complete. */
function countedChance(
  counted: Counted,
  years: number,
): { p: number | null; low: number | null; high: number | null } {
  if (counted.winters === 0) return { p: null, low: null, high: null };
  const within = (period: number) => chanceWithin(1 / period, years);
  return { p: within(counted.period), low: within(counted.high), high: within(counted.low) };
}

/** Infinity ("never by this reading") becomes `null`, as JSON has it. */
function finite({ period, low, high }: { period: number; low: number; high: number }): PeriodRange {
  const [a, b, c] = [period, low, high].map((value) => (Number.isFinite(value) ? value : null));
  return { period: a, low: b, high: c };
}

/** Labels of the winters whose value is at or below the limit, complete and incomplete apart. */
function hitWinters(
  winters: WinterTable,
  minima: Int16Array,
  limit: number,
): { complete: number[]; incomplete: number[] } {
  const complete: number[] = [];
  const incomplete: number[] = [];
  minima.forEach((value, w) => {
    if (value === MISSING_HUNDREDTHS || value > toHundredths(limit)) return;
    (winters.complete[w] ? complete : incomplete).push(winters.winter[w]);
  });
  return { complete, incomplete };
}
