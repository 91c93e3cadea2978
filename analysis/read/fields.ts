const QUOTE = 34;
const SPACE = 32;
const TAB = 9;

function isBlank(code: number): boolean {
  return code === SPACE || code === TAB;
}

/**
 * The fields of one line, by position: quotes and blanks around a field are left out, nothing is copied. Separator
 * `' '` means runs of blanks.
 */
export class Fields {
  /** Where each field starts and ends (exclusive) in the text given last. */
  readonly start = new Int32Array(1024);
  readonly end = new Int32Array(1024);
  count = 0;
  private readonly separator: number;

  constructor(separator: string) {
    this.separator = separator.charCodeAt(0);
  }

  /** Finds at most `limit` fields of the line; `count` says how many there are up to that limit. */
  split(text: string, from: number, to: number, limit: number): void {
    if (this.separator === SPACE) this.splitBlanks(text, from, to, limit);
    else this.splitSeparated(text, from, to, limit);
  }

  private splitBlanks(text: string, from: number, to: number, limit: number): void {
    let count = 0;
    for (let at = from; at < to && count < limit;) {
      while (at < to && isBlank(text.charCodeAt(at))) at += 1;
      if (at >= to) break;
      this.start[count] = at;
      while (at < to && !isBlank(text.charCodeAt(at))) at += 1;
      this.end[count] = at;
      count += 1;
    }
    this.count = count;
  }

  private splitSeparated(text: string, from: number, to: number, limit: number): void {
    const { separator, start, end } = this;
    const max = Math.min(limit, 1024);
    let count = 0;
    let at = from;
    while (count < max) {
      let first = at;
      while (first < to && text.charCodeAt(first) === SPACE) first += 1;
      let last: number;
      if (first < to && text.charCodeAt(first) === QUOTE) {
        first += 1;
        last = closingQuote(text, first, to);
        at = last;
        while (at < to && text.charCodeAt(at) !== separator) at += 1;
        while (first < last && text.charCodeAt(first) === SPACE) first += 1;
      } else {
        at = first;
        while (at < to && text.charCodeAt(at) !== separator) at += 1;
        last = at;
      }
      while (last > first && text.charCodeAt(last - 1) === SPACE) last -= 1;
      start[count] = first;
      end[count] = last;
      count += 1;
      if (at >= to) break;
      at += 1;
    }
    this.count = count;
  }

  /** The field as a string, doubled quotes undone; empty where the line has no such field. */
  text(text: string, index: number): string {
    if (index >= this.count) return '';
    const field = text.slice(this.start[index], this.end[index]);
    return field.includes('""') ? field.replaceAll('""', '"') : field;
  }
}

function closingQuote(text: string, from: number, to: number): number {
  for (let at = from; at < to; at += 1) {
    if (text.charCodeAt(at) !== QUOTE) continue;
    if (at + 1 < to && text.charCodeAt(at + 1) === QUOTE) at += 1;
    else return at;
  }
  return to;
}

/**
 * A plain decimal number in place: optional sign, digits, decimal mark, digits, optional exponent; blanks around it are
 * allowed. NaN when it is anything else, or empty.
 */
export function numberAt(text: string, from: number, to: number, decimalMark = 46): number {
  let at = from;
  while (at < to && isBlank(text.charCodeAt(at))) at += 1;
  while (to > at && isBlank(text.charCodeAt(to - 1))) to -= 1;
  const begin = at;
  let sign = 1;
  const first = at < to ? text.charCodeAt(at) : 0;
  if (first === 45 || first === 43) {
    sign = first === 45 ? -1 : 1;
    at += 1;
  }
  let digits = 0;
  let whole = 0;
  let decimals = -1;
  for (; at < to; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) {
      whole = whole * 10 + (code - 48);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if (code === decimalMark && decimals < 0) {
      decimals = 0;
    } else if ((code === 101 || code === 69) && digits > 0) {
      const field = text.slice(begin, to).replace(String.fromCharCode(decimalMark), '.');
      return /^[+-]?\d*\.?\d*[eE][+-]?\d{1,3}$/.test(field) ? finite(Number(field)) : NaN;
    } else {
      return NaN;
    }
  }
  if (digits === 0) return NaN;
  if (digits > 15)
    return finite(Number(text.slice(begin, to).replace(String.fromCharCode(decimalMark), '.')));
  return (sign * whole) / (decimals > 0 ? POWERS[decimals]! : 1);
}

/** A number too large to be one is none. */
function finite(value: number): number {
  return Number.isFinite(value) ? value : NaN;
}

const POWERS = Array.from({ length: 20 }, (_, power) => 10 ** power);

/** Digits only, in place, as a whole number; -1 when any character is not a digit or there is none. */
export function digitsAt(text: string, from: number, to: number): number {
  if (to <= from || to - from > 9) return -1;
  let value = 0;
  for (let at = from; at < to; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) return -1;
    value = value * 10 + digit;
  }
  return value;
}
