import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, SUSTAINED_HOURS, type NightTable } from '../records/nights.ts';
import type { DayNumber } from '../units/calendar.ts';

const FOUR_HOURS = SUSTAINED_HOURS.indexOf(4);

/**
 * Which nights a station knows well enough to say whether they hit: the minimum is there, and if it is at or below 10 °C
 * the sustained cold too; and for which of the others only a maximum is wanting. Two bits a night, so that the nights
 * themselves need not be kept to judge winters.
 */
export class KnownNights {
  readonly #firstNight: DayNumber;
  readonly #count: number;
  readonly #known: Uint8Array;
  readonly #withoutMaximum: Uint8Array;

  constructor(nights: NightTable) {
    this.#firstNight = nights.firstNight;
    this.#count = nights.count;
    this.#known = new Uint8Array(Math.ceil(nights.count / 8));
    this.#withoutMaximum = new Uint8Array(Math.ceil(nights.count / 8));
    for (let i = 0; i < nights.count; i++) {
      const minimum = nights.sustained[0][i];
      if (minimum === MISSING_HUNDREDTHS) continue;
      const held = nights.sustained[FOUR_HOURS][i] !== MISSING_HUNDREDTHS;
      if (held || minimum > KEPT_NIGHT_MAX_C * 100) this.#known[i >> 3] |= 1 << (i & 7);
      else if (nights.tmaxBefore[i] === MISSING_HUNDREDTHS && nights.tmaxAfter[i] === MISSING_HUNDREDTHS)
        this.#withoutMaximum[i >> 3] |= 1 << (i & 7);
    }
  }

  has(night: DayNumber): boolean {
    return this.#isSet(this.#known, night);
  }

  /** Whether the night's minimum is known and at or below 10 °C, but no maximum beside it, so that its hours aren't. */
  lacksMaximum(night: DayNumber): boolean {
    return this.#isSet(this.#withoutMaximum, night);
  }

  #isSet(bits: Uint8Array, night: DayNumber): boolean {
    const i = night - this.#firstNight;
    return i >= 0 && i < this.#count && (bits[i >> 3] & (1 << (i & 7))) !== 0;
  }
}
