import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, SUSTAINED_HOURS, type NightTable } from '../records/nights.ts';
import type { DayNumber } from '../units/calendar.ts';

const FOUR_HOURS = SUSTAINED_HOURS.indexOf(4);

/**
 * Which nights a station knows well enough to say whether they hit: the minimum is there, and if it is at or below 10 °C
 * the sustained cold too. A bit a night, so that the nights themselves need not be kept to judge winters.
 */
export class KnownNights {
  readonly #firstNight: DayNumber;
  readonly #count: number;
  readonly #bits: Uint8Array;

  constructor(nights: NightTable) {
    this.#firstNight = nights.firstNight;
    this.#count = nights.count;
    this.#bits = new Uint8Array(Math.ceil(nights.count / 8));
    for (let i = 0; i < nights.count; i++) {
      const minimum = nights.sustained[0][i];
      if (minimum === MISSING_HUNDREDTHS) continue;
      if (minimum <= KEPT_NIGHT_MAX_C * 100 && nights.sustained[FOUR_HOURS][i] === MISSING_HUNDREDTHS)
        continue;
      this.#bits[i >> 3] |= 1 << (i & 7);
    }
  }

  has(night: DayNumber): boolean {
    const i = night - this.#firstNight;
    return i >= 0 && i < this.#count && (this.#bits[i >> 3] & (1 << (i & 7))) !== 0;
  }
}
