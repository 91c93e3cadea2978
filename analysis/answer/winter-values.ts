import { MISSING_HUNDREDTHS, SUSTAINED_HOURS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { fahrenheitDifferenceToCelsius, toHundredths } from '../units/temperature.ts';
import { winterMinima, type Gains } from '../winter/winter-minima.ts';

/** Winter values of the complete winters in °C; NaN for a complete winter without a night at or below 10 °C. */
export function completeValuesC(winters: WinterTable, minima: Int16Array): Float64Array {
  const values: number[] = [];
  for (let w = 0; w < minima.length; w++) if (winters.complete[w]) values.push(celsiusOrNaN(minima[w]));
  return Float64Array.from(values);
}

export function celsiusOrNaN(hundredths: number): number {
  return hundredths === MISSING_HUNDREDTHS ? NaN : hundredths / 100;
}

/**
 * Second reading of a winter (a design choice, not published): long cold hurts at warmer levels. The winter's value is the
 * smallest over h of `S_h - shift(h)`, hundredths of °C, to be compared with a four-hour threshold.
 */
export function durationMinima(winters: WinterTable, gains: Gains): Int16Array {
  const result = new Int16Array(winters.winter.length).fill(MISSING_HUNDREDTHS);
  for (const hours of SUSTAINED_HOURS) {
    const shift = toHundredths(durationShiftC(hours));
    winterMinima(winters, hours, gains).forEach((level, w) => {
      if (level === MISSING_HUNDREDTHS) return;
      if (result[w] === MISSING_HUNDREDTHS || level - shift < result[w]) result[w] = level - shift;
    });
  }
  return result;
}

/** The second reading of a record's winters, worked out once for each pair of gains. */
export class DurationReadings {
  readonly #minima = new Map<string, Int16Array>();

  constructor(private readonly winters: WinterTable) {}

  forGains(gains: Gains): Int16Array {
    const key = `${gains.calmC} ${gains.windyC}`;
    let minima = this.#minima.get(key);
    if (!minima) {
      minima = durationMinima(this.winters, gains);
      this.#minima.set(key, minima);
    }
    return minima;
  }
}

/** `clamp(1.6 ln(h/4), -2, +3)` °F as a difference in °C: how much warmer a level does the same harm in `hours` hours. */
export function durationShiftC(hours: number): number {
  const shiftF = Math.min(3, Math.max(-2, 1.6 * Math.log(hours / 4)));
  return fahrenheitDifferenceToCelsius(shiftF);
}
