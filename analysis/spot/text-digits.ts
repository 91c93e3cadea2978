import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';

/** Letters that need no escaping anywhere in an address; each is worth its place, 0 to 63. */
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** A count, rounded, as `width` letters; it must lie between 0 and 64 to the power of `width`, less 1. */
export function writeDigits(count: number, width: number): string {
  let rest = Math.round(count);
  let text = '';
  for (let place = 0; place < width; place++) {
    text = DIGITS[rest % 64] + text;
    rest = Math.floor(rest / 64);
  }
  return text;
}

/**
 * A name in letters that need no escaping: letters and figures as they are, a blank as `_`, anything else as its code
 * point between hyphens. The dot stays free to part names from what follows.
 */
export function writeName(name: string): string {
  return Array.from(name, (letter) => {
    if (letter === ' ') return '_';
    return /^[A-Za-z0-9]$/.test(letter) ? letter : `-${letter.codePointAt(0)!.toString(36)}-`;
  }).join('');
}

/** @throws {InputError} where the text is none that `writeName` writes */
export function readName(text: string): string {
  return text.replace(/-([^-]*)(-?)|_|[^A-Za-z0-9]/g, (found, code: string | undefined, end: string) => {
    if (found === '_') return ' ';
    const point = Number.parseInt(code ?? '', 36);
    if (code === undefined || end === '' || !/^[0-9a-z]+$/.test(code) || point > 0x10ffff) {
      throw new InputError(
        t`A name in the yard's text holds "${found.slice(0, 20)}", which stands for no letter.`,
      );
    }
    return String.fromCodePoint(point);
  });
}

/** Reads letters of one part of a text from left to right. */
export class DigitReader {
  private at = 0;
  constructor(
    private readonly text: string,
    private readonly what: string,
  ) {}

  /** @throws {InputError} where fewer letters are left or one of them is no digit */
  count(width: number): number {
    let value = 0;
    for (const letter of this.letters(width)) {
      const digit = DIGITS.indexOf(letter);
      if (digit < 0)
        throw new InputError(t`${this.what} holds "${letter}", which is not a letter of a yard's text.`);
      value = value * 64 + digit;
    }
    return value;
  }

  /** One of a list by its place in it. */
  choice<Choice>(choices: readonly Choice[]): Choice {
    const at = this.count(1);
    if (at >= choices.length) {
      throw new InputError(t`${this.what} holds choice ${at + 1}; there are ${choices.length}.`);
    }
    return choices[at];
  }

  letters(width: number): string {
    if (this.left() < width) throw new InputError(t`${this.what} is cut short.`);
    this.at += width;
    return this.text.slice(this.at - width, this.at);
  }

  left(): number {
    return this.text.length - this.at;
  }

  rest(): string {
    return this.letters(this.left());
  }

  /** @throws {InputError} where letters are left over */
  end(): void {
    if (this.left() > 0) throw new InputError(t`${this.what} is ${this.left()} letters too long.`);
  }
}
