import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { TextFromBytes } from './decode-text.ts';

/** Bytes looked at to tell text from something else. */
const HEAD_BYTES = 65_536;

/**
 * Text of a byte stream, in chunks of any size: gzip is unpacked when its first bytes say so, a byte order mark is
 * dropped, bytes that aren't UTF-8 are read as Latin-1. Concatenated, the text doesn't depend on how the stream was cut.
 *
 * @param mostBytes most bytes of text, unpacked.
 * @throws {InputError} naming the file: empty, cut or damaged gzip, a zip archive, UTF-16, not text, or more than `mostBytes`.
 */
export async function* openText(
  stream: ReadableStream<Uint8Array>,
  fileName: string,
  mostBytes = Infinity,
): AsyncGenerator<string, void, undefined> {
  const source = new WatchedSource(stream);
  let finished = false;
  try {
    const start = await source.peek(4);
    if (start.length === 0) throw new InputError(t`${fileName} is empty.`);
    const packed = start[0] === 0x1f && start[1] === 0x8b;
    if (start[0] === 0x50 && start[1] === 0x4b && start[2] === 3) {
      throw new InputError(t`${fileName} is a zip archive: unpack it and give the files inside.`);
    }
    const bytes = packed ? source.stream().pipeThrough(gunzip()) : source.stream();
    const reader = bytes.getReader();
    const text = new TextFromBytes();
    let seen = 0;
    let bytesRead = 0;
    for (;;) {
      const { done, value } = await reader.read().catch((error: unknown) => {
        if (source.failure !== null) throw source.failure;
        throw packed ? new InputError(t`${fileName} is a gzip file that is cut short or damaged.`) : error;
      });
      const chunk = value ?? new Uint8Array(0);
      bytesRead += chunk.length;
      if (bytesRead > mostBytes) {
        throw new InputError(
          t`${fileName} holds more than ${Math.round(mostBytes / 1e6)} MB of text; that is the limit for one file.`,
        );
      }
      if (seen < HEAD_BYTES) refuseJunk(chunk.subarray(0, HEAD_BYTES - seen), seen, fileName);
      let piece = text.decode(chunk, done);
      if (seen === 0 && piece.charCodeAt(0) === 0xfeff) piece = piece.slice(1);
      if (piece.length > 0) yield piece;
      // A mark split over chunks leaves `piece` empty until it is whole, so count only bytes that gave text.
      if (piece.length > 0 || seen > 0) seen += chunk.length;
      if (done) break;
    }
    finished = true;
    if (seen === 0) throw new InputError(t`${fileName} is empty.`);
  } finally {
    if (!finished) await source.cancel();
  }
}

function gunzip(): ReadableWritablePair<Uint8Array, Uint8Array> {
  return new DecompressionStream('gzip') as unknown as ReadableWritablePair<Uint8Array, Uint8Array>;
}

function refuseJunk(bytes: Uint8Array, offset: number, fileName: string): void {
  if (
    offset === 0 &&
    ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
  ) {
    throw new InputError(t`${fileName} is UTF-16 text: save it as UTF-8.`);
  }
  for (let at = 0; at < bytes.length; at += 1) {
    const byte = bytes[at]!;
    const isControl = byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 12 && byte !== 26;
    if (isControl) {
      throw new InputError(t`${fileName} is not text: byte ${offset + at + 1} has the value ${byte}.`);
    }
  }
}

/** A stream that remembers its own failure, so that a broken source isn't taken for a broken gzip. */
class WatchedSource {
  failure: unknown = null;
  private readonly reader: ReadableStreamDefaultReader<Uint8Array>;
  private head: Uint8Array = new Uint8Array(0);

  constructor(stream: ReadableStream<Uint8Array>) {
    this.reader = stream.getReader();
  }

  async peek(count: number): Promise<Uint8Array> {
    while (this.head.length < count) {
      const { done, value } = await this.reader.read();
      if (done) break;
      const both = new Uint8Array(this.head.length + value.length);
      both.set(this.head);
      both.set(value, this.head.length);
      this.head = both;
    }
    return this.head;
  }

  stream(): ReadableStream<Uint8Array> {
    return new ReadableStream<Uint8Array>(
      {
        start: (controller) => {
          if (this.head.length > 0) controller.enqueue(this.head);
        },
        pull: async (controller) => {
          try {
            const { done, value } = await this.reader.read();
            if (done) controller.close();
            else controller.enqueue(value);
          } catch (error) {
            this.failure = error;
            controller.error(error);
          }
        },
      },
      { highWaterMark: 1 },
    );
  }

  async cancel(): Promise<void> {
    await this.reader.cancel().catch(() => undefined);
  }
}
