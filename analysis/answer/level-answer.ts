import { chanceWithin } from '../extremes/chance-within.ts';
import { countedPeriod, countHits, type Counted } from '../extremes/counted.ts';
import { estimatedCount } from '../extremes/estimated-count.ts';
import { averagedChance } from '../extremes/interpolation-error.ts';
import { headline, type Headline } from '../extremes/headline.ts';
import type { PeriodRange as ExtremePeriodRange } from '../extremes/period-range.ts';
import { recentCount } from '../extremes/trend.ts';
import { windowShare } from '../extremes/window-share.ts';
import { chanceAtOrBelow } from '../extremes/winter-minimum.ts';
import { MISSING_HUNDREDTHS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { Level } from '../tree/levels.ts';
import { penaltiesAt, totalPenaltyC, type TreeState } from '../tree/penalties.ts';
import { toHundredths } from '../units/temperature.ts';
import { gainsAt, type GainSpread } from '../winter/gain-spread.ts';
import type { Gains } from '../winter/winter-minima.ts';
import type { LevelAnswer, PeriodRange } from './assessment.ts';
import type { FitShelf, HoursBook } from './fit-book.ts';
import type { DurationReadings } from './winter-values.ts';

/** Nights with a hit in complete winters for hours, a limit in °C and gains, `null` where nights aren't at hand. */
export type HitNightCount = (hours: number, limitC: number, gains: Gains) => number | null;

export interface LevelQuestion {
  readonly type: CitrusType;
  readonly level: Level;
  readonly tree: TreeState;
  readonly gain: GainSpread;
  readonly years: number;
}

/** Threshold plus penalties, °C in whole hundredths: a night hits when its sustained cold with gain is at or below. */
export function limitC(
  { type, level, tree }: Omit<LevelQuestion, 'gain' | 'years'>,
  thresholdC?: number,
): number {
  const own = thresholdC ?? type.thresholds[level].centreC;
  return toHundredths(own + totalPenaltyC(penaltiesAt(level, type, tree))) / 100;
}

/** The answer for one type and level at one place. */
export function answerLevel(
  question: LevelQuestion,
  winters: WinterTable,
  shelf: FitShelf,
  durations: DurationReadings,
  hitNights: HitNightCount,
): LevelAnswer {
  const { type, level, tree, gain, years } = question;
  const gains = gainsAt(gain, 'centreC');
  const threshold = type.thresholds[level];
  const limit = limitC(question);
  const hours = shelf.forGains(gains).forHours(threshold.hours);
  const n = hours.valuesC.length;
  const hits = hitWinters(winters, hours.minima, limit);
  const counted = countAt(hours, limit);
  const fitted = hours.fit?.returnPeriod(limit) ?? null;
  const chance = hours.fit?.chanceWithin(limit, years) ?? countedChance(counted, years);
  const longHits = hitWinters(winters, durations.forGains(gains), limit).complete.length;
  const nights = n === 0 ? null : hitNights(threshold.hours, limit, gains);
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
    headline: headline(counted, fittedAt(hours, limit), n),
    if_threshold: {
      low: {
        threshold_c: threshold.lowC,
        period: headlineAt(hours, limitC(question, threshold.lowC)).period,
      },
      high: {
        threshold_c: threshold.highC,
        period: headlineAt(hours, limitC(question, threshold.highC)).period,
      },
    },
    if_gain: {
      low: ifGain(gain, 'lowC', shelf, threshold.hours, limit),
      high: ifGain(gain, 'highC', shelf, threshold.hours, limit),
    },
    with_duration: { hits: longHits, period: longHits === 0 ? null : n / longHits },
    chance_in_years: { years, ...chance },
    nights_per_winter: nights === null ? null : nights / n,
    beside: besideCount(winters, hours, limit, years),
  };
}

/** The headline should spot and cover give no more, or all, of what they may. */
function ifGain(
  gain: GainSpread,
  end: 'lowC' | 'highC',
  shelf: FitShelf,
  hours: number,
  limit: number,
): LevelAnswer['if_gain']['low'] {
  const gains = gainsAt(gain, end);
  const told = headlineAt(shelf.forGains(gains).forHours(hours), limit);
  return { gain_calm_c: gains.calmC, gain_windy_c: gains.windyC, headline: told };
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

function headlineAt(book: HoursBook, limit: number): Headline {
  return headline(countAt(book, limit), fittedAt(book, limit), book.valuesC.length);
}

/** The curve's period with its range, or the shorter period that it has at a larger gain; `null` without a curve. */
export function fittedAt({ fit, ladder }: HoursBook, limit: number): ExtremePeriodRange | null {
  if (!fit) return null;
  const fitted = fit.returnPeriod(limit);
  const period = Math.min(fitted.period, ladder.shortest(limit));
  return { period, low: Math.min(fitted.low, period), high: fitted.high };
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
