import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/** What a server said about the body it began to send; kept beside the part so that a later run can go on with it. */
export interface BodyDescription {
  readonly url: string;
  /** Strong ETag, with its quotes. */
  readonly etag?: string;
  readonly lastModified?: string;
  /** Length of the whole body, bytes. */
  readonly total?: number;
  readonly encoding?: string;
}

/** The part of a file that has come so far: `TARGET.part`, described by `TARGET.part.json`; `TARGET.part.plain` unpacked. */
export class PartialFile {
  readonly target: string;
  readonly path: string;
  readonly plain: string;

  constructor(target: string) {
    this.target = target;
    this.path = `${target}.part`;
    this.plain = `${this.path}.plain`;
  }

  /** Bytes that have come and what they belong to; undefined where nothing usable is there. */
  async state(): Promise<{ bytes: number; body: BodyDescription } | undefined> {
    try {
      const body = JSON.parse(await readFile(`${this.path}.json`, 'utf8')) as BodyDescription;
      const { size } = await stat(this.path);
      return size > 0 ? { bytes: size, body } : undefined;
    } catch {
      return undefined;
    }
  }

  /** Empties the part and writes down what is going to fill it: description first, so that no byte is ever without one. */
  async begin(body: BodyDescription): Promise<void> {
    await this.discard();
    await writeFile(`${this.path}.json`, JSON.stringify(body));
    await writeFile(this.path, '');
  }

  /** Appends what comes. Rejects when the disk refuses it. */
  async append(body: Readable, came: (bytes: number) => void): Promise<void> {
    body.on('data', (chunk: Uint8Array) => came(chunk.length));
    await pipeline(body, createWriteStream(this.path, { flags: 'a' }));
  }

  /** Takes `path` (the part itself, or what was made of it) as the target, whole at once. */
  async finish(path = this.path): Promise<void> {
    await rename(path, this.target);
    await this.discard();
  }

  /** Keeps the bytes for whoever wants to look at them, but makes sure that no try goes on with them. */
  async spoil(): Promise<void> {
    await rm(`${this.path}.json`, { force: true });
  }

  /** Takes all of it away, and what a run that was killed while it unpacked has left. */
  async discard(): Promise<void> {
    await rm(this.path, { force: true });
    await rm(this.plain, { force: true });
    await rm(`${this.path}.json`, { force: true });
  }
}

/** MD5 of a file, 32 hexadecimal digits. */
export async function md5Of(path: string): Promise<string> {
  const hash = createHash('md5');
  for await (const chunk of createReadStream(path)) hash.update(chunk as Uint8Array);
  return hash.digest('hex');
}
