import { sayFigureText } from '../language/figures.ts';
import { t } from '../language/t.ts';

/** A number that may be drawn or typed: what it is called in sentences (`a width`), its ends, and its unit's words after it. */
export interface Limits {
  readonly what: string;
  readonly least: number;
  readonly most: number;
  readonly unit: string;
}

/** A number in a sentence: without the tail of digits that arithmetic leaves. */
export function shown(value: number): string {
  return Number.isFinite(value) ? sayFigureText(String(Number(value.toPrecision(6)))) : t`not a number`;
}

/** A name in a sentence: in quotes, on one line, cut short. */
export function inQuotes(name: string): string {
  return JSON.stringify(name.length > 40 ? `${name.slice(0, 37)}...` : name);
}

/** What is wrong with a number, said after the name of what it belongs to ("The wall 2"); `null`: nothing. */
export function outsideLimits(value: number, { what, least, most, unit }: Limits): string | null {
  if (!Number.isFinite(value)) return t`has ${what} that is not a number`;
  if (value < least)
    return t`has ${what} of ${shown(value) + unit}; at least ${shown(least) + unit} is needed`;
  if (value > most)
    return t`has ${what} of ${shown(value) + unit}; at most ${shown(most) + unit} is possible`;
  return null;
}
