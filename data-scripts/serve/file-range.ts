/** First and last byte of a file to send, both included. */
export interface FileRange {
  readonly first: number;
  readonly last: number;
}

/**
 * The part of a file of `size` bytes that a `Range` header asks for; `'beyond'` when it starts at or after the end;
 * undefined where the whole file is to be sent: no range, or one that a server may ignore (RFC 9110, 14.2) because it
 * is of several parts, of the last N bytes, of another unit, or backward.
 */
export function fileRange(header: string | undefined, size: number): FileRange | 'beyond' | undefined {
  const [, start, end] = /^bytes=(\d+)-(\d*)$/.exec(header ?? '') ?? [];
  if (start === undefined || (end !== '' && Number(end) < Number(start))) return undefined;
  const first = Number(start);
  if (first >= size) return 'beyond';
  return { first, last: end === '' ? size - 1 : Math.min(Number(end), size - 1) };
}
