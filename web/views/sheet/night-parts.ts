import type { LifeAnswer } from '../../../analysis/answer/life.ts';
import type { YearAnswer } from '../../../analysis/answer/year.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';

/** What the sheet holds only when every night of the place is at hand. */
export interface NightParts {
  readonly nights: KeptNights;
  readonly life: LifeAnswer | null;
  readonly year: YearAnswer | null;
  /** The lives have their ranges, as far as they get any. */
  readonly ranged: boolean;
}
