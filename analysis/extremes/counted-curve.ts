import { chanceWithin } from './chance-within.ts';
import { countedPeriod, countHits } from './counted.ts';
import type { ChanceEstimate, LevelEstimate, WinterFit } from './fitted-winters.ts';
import type { PeriodRange } from './period-range.ts';

/**
 * Stands in for a fit where no curve can be drawn: a place (nearly) without cold nights, or with all winters alike.
 * Answers with the count and Wilson's range; knows no level.
 */
export class CountedCurve implements WinterFit {
  readonly hasCurve = false;
  readonly #valuesC: ArrayLike<number>;

  /** @param valuesC one value a complete winter, NaN where it had no cold night. */
  constructor(valuesC: ArrayLike<number>) {
    this.#valuesC = valuesC;
  }

  returnPeriod(thresholdC: number): PeriodRange {
    const { period, low, high } = this.#count(thresholdC);
    return { period, low, high };
  }

  chanceWithin(thresholdC: number, winters: number): ChanceEstimate {
    const { period, low, high } = this.#count(thresholdC);
    return {
      p: chanceWithin(1 / period, winters),
      low: chanceWithin(1 / high, winters),
      high: chanceWithin(1 / low, winters),
    };
  }

  level(): LevelEstimate | null {
    return null;
  }

  #count(thresholdC: number) {
    return countedPeriod(countHits(this.#valuesC, thresholdC), this.#valuesC.length);
  }
}
