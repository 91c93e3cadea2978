import { FEWEST_WINTERS_TO_FIT, fitWinters } from '../extremes/fit-winters.ts';
import { drawMovingGev } from '../extremes/gev-moving-draws.ts';
import { fitMovingGev, movingGevAt } from '../extremes/gev-moving-location.ts';
import { gevReturnPeriod, gevSurvival } from '../extremes/gev.ts';
import { headline, type Headline } from '../extremes/headline.ts';
import { averagedChance, spreadDraws, type InterpolationError } from '../extremes/interpolation-error.ts';
import { mannKendall, RECENT_WINTERS, senSlope } from '../extremes/trend.ts';
import { negateMinima } from '../extremes/winter-minimum.ts';
import { quantileType7 } from '../math/quantile.ts';
import { seededRandom } from '../math/seeded-random.ts';
import { durationWeights } from '../records/nights.ts';
import { FIT_SEED, interpolationOf, type FitBook } from './fit-book.ts';
import { countAt, fittedAt } from './level-answer.ts';
import { neighbourSkewness } from './pooled-neighbours.ts';
import type { Subject } from './subject.ts';

/** One reading of how often a level is reached. Periods in winters, range 90 %. */
export interface WintersReading {
  /** Complete winters it is made from, and those of them with a hit. */
  readonly winters: number;
  readonly hits: number;
  readonly first: number;
  readonly last: number;
  readonly headline: Headline;
}

/** The curve whose location moves with the year, as it stands in one winter. Infinity: never by this curve. */
export interface MovingReading {
  readonly winter: number;
  readonly period: number;
  readonly low: number;
  readonly high: number;
}

/** Whether the winters' coldest levels changed. */
export interface ChangeTest {
  readonly mannKendallP: number;
  /** Likelihood-ratio chance of so good a moving location without a trend. */
  readonly ratioP: number;
  /** Sen slope of the level, °C a decade: plus means milder. */
  readonly senCPerDecade: number;
  /** What the moving curve's location gains from the first winter to the last, °C: plus means milder. */
  readonly movedC: number;
}

/** The same question answered from the whole record, from its end, and from a curve that moves. */
export interface ThreeReadings {
  /** `null` without a complete winter. */
  readonly whole: WintersReading | null;
  /** `null` where the last 30 calendar winters are the whole record. */
  readonly last30: WintersReading | null;
  /** `null` with fewer than 20 winters that had a cold night. */
  readonly moving: MovingReading | null;
  readonly change: ChangeTest | null;
}

/** What is asked: hours of cold and the level to reach, penalties in it. */
export interface ReadingsQuestion {
  readonly hours: number;
  readonly limitC: number;
  /** Draws behind the moving curve's range; 500 unless told. */
  readonly draws?: number;
}

/** Three readings of one place for one threshold. */
export function threeReadings(subject: Subject, book: FitBook, question: ReadingsQuestion): ThreeReadings {
  const { hours, limitC } = question;
  const ofHours = book.forHours(hours);
  const { valuesC, interpolation } = ofHours;
  const labels = [...subject.winters.winter].filter((_, w) => subject.winters.complete[w] === 1);
  if (labels.length === 0) return { whole: null, last30: null, moving: null, change: null };
  const error = subject.interpolation?.[durationWeights(hours).lower];
  const start = labels.findIndex((winter) => winter > labels.at(-1)! - RECENT_WINTERS);
  const lateC = valuesC.slice(start);
  const neighbours = subject.neighbours.flatMap(
    (winters) => neighbourSkewness(winters, hours, book.gains) ?? [],
  );
  const lateError = interpolationOf(error, lateC);
  const late = () => fitWinters({ valuesC: lateC, neighbours, interpolation: lateError, seed: FIT_SEED });
  return {
    whole: readingOf(labels, ofHours, limitC, fittedAt(ofHours, limitC)),
    last30:
      start === 0
        ? null
        : readingOf(
            labels.slice(start),
            { valuesC: lateC, interpolation: lateError },
            limitC,
            late()?.returnPeriod(limitC) ?? null,
          ),
    ...movingReading(labels, valuesC, interpolation, question),
  };
}

function readingOf(
  labels: readonly number[],
  values: Parameters<typeof countAt>[0],
  limitC: number,
  fitted: Parameters<typeof headline>[1],
): WintersReading {
  const counted = countAt(values, limitC);
  return {
    winters: labels.length,
    hits: counted.hits,
    first: labels[0],
    last: labels.at(-1)!,
    headline: headline(counted, fitted, labels.length),
  };
}

function movingReading(
  labels: readonly number[],
  valuesC: Float64Array,
  interpolation: InterpolationError | null,
  { limitC, draws = 500 }: ReadingsQuestion,
): Pick<ThreeReadings, 'moving' | 'change'> {
  const cold = labels.flatMap((winter, i) =>
    Number.isNaN(valuesC[i]) ? [] : [{ winter, level: valuesC[i] }],
  );
  const levels = cold.map(({ level }) => level);
  if (cold.length < FEWEST_WINTERS_TO_FIT || new Set(levels).size === 1)
    return { moving: null, change: null };
  const times = cold.map(({ winter }) => winter);
  const last = labels.at(-1)!;
  const share = cold.length / labels.length;
  const fit = fitMovingGev(negateMinima(levels), times);
  const change = {
    mannKendallP: mannKendall(levels).p,
    ratioP: fit.p,
    senCPerDecade: 10 * senSlope(levels, times),
    movedC: -fit.slope * (times.at(-1)! - times[0]),
  };
  if (!fit.converged) return { moving: null, change };
  const gev = movingGevAt(fit, last);
  const chance = (levelC: number): number => gevSurvival(-levelC, gev);
  const random = seededRandom(FIT_SEED);
  const drawn = drawMovingGev(fit, times, last, draws, random);
  const { location, scale, k } = interpolation ? spreadDraws(drawn, interpolation, random) : drawn;
  const periods = Float64Array.from(
    location,
    (place, b) => gevReturnPeriod(-limitC, { location: place, scale: scale[b], k: k[b] }) / share,
  );
  return {
    moving: {
      winter: last,
      period: 1 / (share * (interpolation ? averagedChance(chance, limitC, interpolation) : chance(limitC))),
      low: periodQuantile(periods, 0.05),
      high: periodQuantile(periods, 0.95),
    },
    change,
  };
}

/** Quantile of periods among which some may be Infinity: by the chances, which are finite. */
function periodQuantile(periods: Float64Array, p: number): number {
  return (
    1 /
    quantileType7(
      periods.map((period) => 1 / period),
      1 - p,
    )
  );
}
