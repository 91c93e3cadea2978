/** Input that can't be used: the message is one sentence for the person who gave it (file, line, value, limit). */
export class InputError extends Error {
  override readonly name: string = 'InputError';
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
