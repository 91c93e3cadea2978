/** Longest message, characters: what it quotes may be of any length. */
const LONGEST = 600;

/**
 * Input that can't be used: the message is one sentence for the person who gave it (file, line, value, limit). It is one line,
 * whatever stands in what it quotes.
 */
export class InputError extends Error {
  override readonly name: string = 'InputError';

  constructor(message: string) {
    const line = message.replace(/[\r\n\u2028\u2029]+/g, ' ');
    super(line.length > LONGEST ? `${line.slice(0, LONGEST)}…` : line);
  }
}

/** A file whose format can't be told: fatal when the file was named, passed over when it merely lay in a folder. */
export class UnknownFormatError extends InputError {}

/** A file that leaves open what only its owner can tell: whether it is written in °F or °C, or with the day or the month first. */
export class UnclearError extends InputError {
  constructor(
    message: string,
    readonly asks: 'unit' | 'dateOrder',
  ) {
    super(message);
  }
}
