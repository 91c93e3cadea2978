import { fitWinters } from '../extremes/fit-winters.ts';
import { FittedWinters, type WinterFit } from '../extremes/fitted-winters.ts';
import type { Gev } from '../extremes/gev.ts';
import type { InterpolationError } from '../extremes/interpolation-error.ts';
import { FEWEST_FOR_LIKELIHOOD, fitGevByMaximumLikelihood } from '../extremes/gev-maximum-likelihood.ts';
import { negateMinima } from '../extremes/winter-minimum.ts';
import { durationWeights } from '../records/nights.ts';
import { winterMinima, type Gains } from '../winter/winter-minima.ts';
import { GainLadder } from './gain-ladder.ts';
import { neighbourSkewness } from './pooled-neighbours.ts';
import type { Subject } from './subject.ts';
import { completeValuesC } from './winter-values.ts';

/** Starts the draws of every fit, so that the same question gets the same range on every machine. */
export const FIT_SEED = 1895;

/** Books kept: a few covers tried in turn, each with the ends of its gain, at the canopy and at the graft. */
const MOST_BOOKS = 24;

/** What is known of a place for one number of hours: every winter's value, the complete ones, and their fit. */
export interface HoursBook {
  /** Value of each winter of the record, hundredths of °C. */
  readonly minima: Int16Array;
  /** Values of the complete winters, °C. */
  readonly valuesC: Float64Array;
  /** How far they may be off at a place between stations; `null` at a station. */
  readonly interpolation: InterpolationError | null;
  /** `null` with fewer than 20 complete winters. */
  readonly fit: WinterFit | null;
  /** GEV of the negated values by maximum likelihood, as a check; `null` where it can't be had. */
  readonly likelihood: Gev | null;
  /** Curves at larger gains, which the headline never outlasts. */
  readonly ladder: GainLadder;
}

/** The fits of one place under one pair of gains, each made once and shared by all types and levels. */
export class FitBook {
  readonly #byHours = new Map<number, HoursBook>();

  constructor(
    private readonly subject: Subject,
    readonly gains: Gains,
    private readonly draws = 1000,
  ) {}

  forHours(hours: number): HoursBook {
    let book = this.#byHours.get(hours);
    if (!book) {
      const minima = winterMinima(this.subject.winters, hours, this.gains);
      const valuesC = completeValuesC(this.subject.winters, minima);
      const neighbours = this.subject.neighbours.flatMap(
        (winters) => neighbourSkewness(winters, hours, this.gains) ?? [],
      );
      const interpolation = interpolationOf(
        this.subject.interpolation?.[durationWeights(hours).lower],
        valuesC,
      );
      const fit = fitWinters({ valuesC, neighbours, interpolation, seed: FIT_SEED, draws: this.draws });
      book = {
        minima,
        valuesC,
        interpolation,
        fit,
        ladder: new GainLadder(this.subject, hours, this.gains),
        likelihood: fit instanceof FittedWinters ? likelihoodFit(valuesC) : null,
      };
      this.#byHours.set(hours, book);
    }
    return book;
  }
}

/** How far a place's winters may be off; their mean is that of the values with gains. */
export function interpolationOf(
  error: InterpolationError | null | undefined,
  valuesC: Float64Array,
): InterpolationError | null {
  if (!error) return null;
  let sum = 0;
  let cold = 0;
  for (const value of valuesC) {
    if (Number.isNaN(value)) continue;
    sum += value;
    cold++;
  }
  const { meanErrorC, logScaleError, correlation } = error;
  return { meanC: sum / cold, meanErrorC, logScaleError, correlation };
}

/** Fits under several pairs of gains, a book each: a soil bank gains at the graft and nowhere else. */
export class FitShelf {
  readonly #books = new Map<string, FitBook>();

  constructor(
    private readonly subject: Subject,
    private readonly draws = 1000,
  ) {}

  forGains(gains: Gains): FitBook {
    const key = `${gains.calmC} ${gains.windyC}`;
    const book = this.#books.get(key) ?? new FitBook(this.subject, gains, this.draws);
    this.#books.delete(key);
    this.#books.set(key, book);
    if (this.#books.size > MOST_BOOKS) this.#books.delete(this.#books.keys().next().value!);
    return book;
  }
}

function likelihoodFit(valuesC: Float64Array): Gev | null {
  const negated = negateMinima(valuesC);
  if (negated.length < FEWEST_FOR_LIKELIHOOD) return null;
  const { gev, converged } = fitGevByMaximumLikelihood(negated);
  return converged ? gev : null;
}
