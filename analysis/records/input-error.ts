/** Input that can't be used: the message is one sentence for the person who gave it (file, line, value, limit). */
export class InputError extends Error {
  override readonly name = 'InputError';
}
