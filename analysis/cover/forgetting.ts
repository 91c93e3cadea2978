import { countedPeriod, type Counted } from '../extremes/counted.ts';
import type { CoverRecord } from './cover-nights.ts';

/** Chance that a night which the cover would have saved goes by uncovered: one in ten. */
export const ONE_NIGHT_IN_TEN = 0.1;

/** What forgetting costs: winters with a loss, as periods with their ranges; `hits` of `forgetting` is an expectation. */
export interface Forgetting {
  readonly missed: number;
  /** No cover at all. */
  readonly bare: Counted;
  /** Every night covered. */
  readonly faithful: Counted;
  /** Each night to be saved missed with the chance `missed`. */
  readonly forgetting: Counted;
}

/**
 * Expected share of complete winters with a loss when each night that the cover would save is missed with chance `missed`,
 * independently of the others: a winter with a night lost even so is lost; another is lost with chance
 * `1 - (1 - missed)^saved`. The expectation is exact for the winters on record; its range is Wilson's 90 % range of the same
 * share of as many winters, as for any count. Whoever forgets whole spells at a time loses fewer winters than this.
 * @throws RangeError for a chance outside 0 to 1
 */
export function forgetting(
  { winters, completeWinters }: Pick<CoverRecord, 'winters' | 'completeWinters'>,
  missed = ONE_NIGHT_IN_TEN,
): Forgetting {
  if (!(missed >= 0 && missed <= 1)) throw new RangeError(`A chance lies in 0 to 1, not ${missed}.`);
  const complete = winters.filter((winter) => winter.complete);
  const period = (chanceOfLoss: (saved: number, lost: number) => number): Counted =>
    countedPeriod(
      complete.reduce((sum, { saved, lost }) => sum + chanceOfLoss(saved, lost), 0),
      completeWinters,
    );
  return {
    missed,
    bare: period((saved, lost) => (saved + lost > 0 ? 1 : 0)),
    faithful: period((_, lost) => (lost > 0 ? 1 : 0)),
    forgetting: period((saved, lost) => (lost > 0 ? 1 : 1 - (1 - missed) ** saved)),
  };
}
