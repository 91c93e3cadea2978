/** What a server said of the file it began to send; kept beside the part, so that a later visit can go on with it. */
export interface BodyDescription {
  readonly url: string;
  /** Strong ETag with its quotes; `null` where there is none or the server doesn't let pages see it. */
  readonly etag: string | null;
  readonly lastModified: string | null;
  /** Length of the whole body, bytes. */
  readonly total: number | null;
  /** When it began to come, ms since 1970. */
  readonly sentAt: number;
}

/** The part of a file that has come so far. */
export interface PartState {
  readonly body: BodyDescription;
  readonly bytes: number;
  /** True once all of it is there and was checked. */
  readonly whole: boolean;
}

/** Parts of files by their addresses. Every method may reject where the browser's storage is full or refuses. */
export interface PartStore {
  state(url: string): Promise<PartState | null>;
  /** Empties the part and writes down what is going to fill it. */
  begin(body: BodyDescription): Promise<void>;
  /**
   * Puts bytes behind the `at` that are there. False, with nothing put, where there aren't so many or are more: another page
   * fetches the same file.
   */
  append(url: string, bytes: Blob, at: number): Promise<boolean>;
  /** All that has come so far, in its order. */
  content(url: string): Promise<Blob>;
  finish(url: string): Promise<void>;
  discard(url: string): Promise<void>;
}

/** Parts that last as long as the visit: where the browser keeps nothing, and in tests. */
export class PassingParts implements PartStore {
  readonly #parts = new Map<string, { body: BodyDescription; chunks: Blob[]; whole: boolean }>();

  async state(url: string): Promise<PartState | null> {
    const part = this.#parts.get(url);
    if (!part) return null;
    return {
      body: part.body,
      bytes: part.chunks.reduce((sum, { size }) => sum + size, 0),
      whole: part.whole,
    };
  }
  async begin(body: BodyDescription): Promise<void> {
    this.#parts.set(body.url, { body, chunks: [], whole: false });
  }
  async append(url: string, bytes: Blob, at: number): Promise<boolean> {
    if ((await this.state(url))?.bytes !== at) return false;
    this.#parts.get(url)?.chunks.push(bytes);
    return true;
  }
  async content(url: string): Promise<Blob> {
    return new Blob(this.#parts.get(url)?.chunks ?? []);
  }
  async finish(url: string): Promise<void> {
    const part = this.#parts.get(url);
    if (part) part.whole = true;
  }
  async discard(url: string): Promise<void> {
    this.#parts.delete(url);
  }
}
