/**
 * Bytes to text, chunk by chunk: UTF-8, and any byte that is not valid UTF-8 taken as Latin-1. The same bytes give the
 * same text however they are cut into chunks.
 */
export class TextFromBytes {
  private readonly strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  private rest = new Uint8Array(0);

  /** Text of the bytes so far that are whole; the last call (`last`) also gives what was held back. */
  decode(chunk: Uint8Array, last: boolean): string {
    const bytes = this.rest.length === 0 ? chunk : joined(this.rest, chunk);
    const whole = last ? bytes.length : bytes.length - incompleteTail(bytes);
    this.rest = bytes.slice(whole);
    const block = bytes.subarray(0, whole);
    try {
      return this.strict.decode(block);
    } catch {
      return decodeMixed(block);
    }
  }
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

/** Bytes of a multi-byte character that a lead byte announces: 1 for a lone byte. */
function announcedLength(lead: number): number {
  if (lead >= 0xc2 && lead <= 0xdf) return 2;
  if (lead >= 0xe0 && lead <= 0xef) return 3;
  if (lead >= 0xf0 && lead <= 0xf4) return 4;
  return 1;
}

function isContinuation(byte: number): boolean {
  return (byte & 0xc0) === 0x80;
}

/** How many bytes at the end may be the start of a character that goes on in the next chunk. */
function incompleteTail(bytes: Uint8Array): number {
  for (let back = 1; back <= 3 && back <= bytes.length; back += 1) {
    const byte = bytes[bytes.length - back]!;
    if (isContinuation(byte)) continue;
    return announcedLength(byte) > back ? back : 0;
  }
  return 0;
}

/** Character by character: valid sequences as UTF-8, every other byte as Latin-1. */
function decodeMixed(bytes: Uint8Array): string {
  const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let text = '';
  for (let at = 0; at < bytes.length;) {
    const length = announcedLength(bytes[at]!);
    let decoded: string | null = null;
    if (length > 1 && at + length <= bytes.length) {
      try {
        decoded = strict.decode(bytes.subarray(at, at + length));
      } catch {
        decoded = null;
      }
    }
    text += decoded ?? String.fromCharCode(bytes[at]!);
    at += decoded === null ? 1 : length;
  }
  return text;
}
