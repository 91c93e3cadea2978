import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { numberAt } from './fields.ts';

const DMS = /^(\d{2,3})[° ]?(\d{2})[' ]?(\d{2}(?:\.\d+)?)?["″ ]?\s*([NSEWO])$/i;

/**
 * Degrees from decimal text (`-3.68`) or degrees, minutes and seconds with a letter (`411734N`, `0034042W`; `O` is
 * west). `null` where the field is empty.
 * @throws {InputError} naming `where`, when it is neither or beyond the limit (90 for a latitude, 180 for a longitude).
 */
export function degreesOf(field: string, axis: 'lat' | 'lon', where: string): number | null {
  const text = field.trim();
  const what = axis === 'lat' ? 'latitude' : 'longitude';
  if (text === '' || /^(na|nan|null)$/i.test(text)) return null;
  let degrees = numberAt(text, 0, text.length, text.includes(',') ? 44 : 46);
  const match = DMS.exec(text);
  if (match) {
    const [minutes, seconds] = [Number(match[2]), Number(match[3] ?? 0)];
    const letter = match[4]!.toUpperCase();
    const fits = axis === 'lat' ? 'NS'.includes(letter) : 'EWO'.includes(letter);
    degrees = fits && minutes < 60 && seconds < 60 ? Number(match[1]) + minutes / 60 + seconds / 3600 : NaN;
    if ('SWO'.includes(letter)) degrees = -degrees;
  }
  if (Number.isNaN(degrees)) throw new InputError(t`${where}: ${what} "${text}" is not a coordinate.`);
  const limit = axis === 'lat' ? 90 : 180;
  if (Math.abs(degrees) > limit) {
    throw new InputError(t`${where}: ${what} ${text} is beyond ${limit} degrees.`);
  }
  return degrees;
}

/** Metres above sea level, `null` where empty or one of the archive's marks for unknown (-999.9, -9999). */
export function elevationOf(field: string): number | null {
  const text = field.trim();
  const metres = numberAt(text, 0, text.length, text.includes(',') ? 44 : 46);
  return Number.isNaN(metres) || metres <= -999 || metres > 9000 ? null : metres;
}
