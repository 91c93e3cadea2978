import { sayFigureText } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { toHundredths } from '../units/temperature.ts';
import type { MeasuredKind, MeasuredOffset } from './measured-offset.ts';

/** No spot of a yard differs by more from its station, °C. */
export const MEASURED_MAX_C = 20;
const NIGHTS_MAX = 9999;
const TEXT = /^(?:c(-?\d+)_(-?\d+)_(-?\d+)_(\d+))?(?:w(-?\d+)_(-?\d+)_(-?\d+)_(\d+))?$/;

/**
 * A measured offset as a short text for an address: `c` for calm, `w` for windy nights, each with low, centre, high in
 * hundredths of °C and the number of nights, such as `c63_145_227_15w-20_30_90_6`.
 */
export function writeMeasuredText(measured: MeasuredOffset): string {
  return writeKind('c', measured.calm) + writeKind('w', measured.windy);
}

function writeKind(letter: string, kind: MeasuredKind | null): string {
  if (!kind) return '';
  const { lowC, centreC, highC } = kind.spread;
  // `+ 0` turns a rounded -0 into 0, which would be written alike but read as another number.
  return letter + [lowC, centreC, highC].map((c) => toHundredths(c) + 0).join('_') + `_${kind.nights}`;
}

/** @throws {InputError} when the text isn't one, has ends out of order, an offset beyond 20 °C or no nights. */
export function readMeasuredText(text: string): MeasuredOffset {
  const match = TEXT.exec(text);
  if (!match || text === '') {
    throw new InputError(
      t`${measured(text)} isn't a measured offset: something like c63_145_227_15 is needed.`,
    );
  }
  return { calm: readKind(match.slice(1, 5), text), windy: readKind(match.slice(5, 9), text) };
}

/** As in the address, cut short. */
function measured(text: string): string {
  return `measured=${text.slice(0, 60)}`;
}

function readKind(parts: readonly (string | undefined)[], text: string): MeasuredKind | null {
  if (parts[0] === undefined) return null;
  const [low, centre, high, nights] = parts.map(Number) as [number, number, number, number];
  const shown = measured(text);
  const largest = Math.max(-low, high) / 100;
  if (!(low <= centre && centre <= high)) {
    throw new InputError(t`${shown}: the offset's ends ${low}, ${centre}, ${high} are out of order.`);
  }
  if (largest > MEASURED_MAX_C) {
    throw new InputError(
      t`${shown}: an offset of ${sayFigureText(String(largest))} °C is beyond the limit of ${MEASURED_MAX_C} °C.`,
    );
  }
  if (!(nights >= 1 && nights <= NIGHTS_MAX)) {
    throw new InputError(t`${shown}: ${nights} nights were measured; 1 to ${NIGHTS_MAX} are possible.`);
  }
  return { spread: { lowC: low / 100, centreC: centre / 100, highC: high / 100 }, nights };
}
