import type { KeptNights } from '../records/kept-nights.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_HOURS } from '../records/nights.ts';
import { toHundredths } from '../units/temperature.ts';
import { gainsByKindC, type Gains } from '../winter/winter-minima.ts';

/** No night: warmer than any. */
export const NO_NIGHT = 32767;

/** The air a tree stands in, night by night: sustained cold of some hours with the gain of spot and cover. */
export class AirAtTree {
  readonly #levels: Int16Array;
  readonly #kinds: Uint8Array;
  readonly #gains: Int32Array;

  /** @throws RangeError for hours that aren't kept */
  constructor({ sustained, kind }: KeptNights, hours: number, gains: Gains) {
    const levels = sustained[SUSTAINED_HOURS.findIndex((kept) => kept === hours)];
    if (!levels)
      throw new RangeError(`Nights are kept for ${SUSTAINED_HOURS.join(', ')} hours, not for ${hours}.`);
    this.#levels = levels;
    this.#kinds = kind;
    this.#gains = Int32Array.from(gainsByKindC(gains), toHundredths);
  }

  /** Of night `i`, hundredths of °C; {@link NO_NIGHT} where it isn't known. */
  at(i: number): number {
    const level = this.#levels[i];
    return level === MISSING_HUNDREDTHS ? NO_NIGHT : level + this.#gains[this.#kinds[i]];
  }

  /** Coldest of the nights from `from` to before `to`, of those with a 1 in `only` where that is given. */
  coldest(from: number, to: number, only?: Uint8Array): number {
    let coldest = NO_NIGHT;
    for (let i = from; i < to; i++) {
      if (only && only[i] === 0) continue;
      const air = this.at(i);
      if (air < coldest) coldest = air;
    }
    return coldest;
  }
}
