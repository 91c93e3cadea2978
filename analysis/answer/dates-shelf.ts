import type { KeptNights } from '../records/kept-nights.ts';
import { toHundredths } from '../units/temperature.ts';
import { winterDates, type DatedWinters, type WinterDates } from '../winter/dated-winters.ts';
import type { HitLimit } from '../winter/hit-nights.ts';
import { noSeasonDates, seasonDates, type SeasonDates } from '../winter/season-dates.ts';
import { winterDraws, type WinterDraws } from '../winter/winter-draws.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import { DATE_CHANCES } from './year.ts';

/** Dates of one limit, winter by winter and by chance. */
export interface LimitDates {
  readonly limit: HitLimit;
  readonly winterDates: WinterDates;
  readonly dates: SeasonDates;
}

/** Dates by limit, each made once: many types share limits, and all limits share the draws of winters. */
export class DatesShelf {
  readonly #made = new Map<string, LimitDates>();
  readonly #draws: WinterDraws | null;

  constructor(
    private readonly nights: KeptNights,
    private readonly dated: DatedWinters,
    private readonly hemisphere: Hemisphere,
    draws: number,
    seed: number,
  ) {
    const { length } = dated.winters;
    this.#draws = length === 0 ? null : winterDraws(length, draws, seed);
  }

  /** @throws RangeError for hours that aren't kept */
  at(limit: HitLimit): LimitDates {
    const { hours, limitC, gains } = limit;
    const key = [hours, ...[limitC, gains.calmC, gains.windyC].map(toHundredths)].join();
    const kept = this.#made.get(key);
    if (kept) return kept;
    const own = winterDates(this.nights, this.dated, limit, this.hemisphere);
    const dates =
      this.#draws === null ? noSeasonDates(DATE_CHANCES) : seasonDates(own, this.#draws, DATE_CHANCES);
    const made = { limit, winterDates: own, dates };
    this.#made.set(key, made);
    return made;
  }
}
