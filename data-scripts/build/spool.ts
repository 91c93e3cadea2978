import { appendFile, mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { RawReadings } from '../../analysis/gather/raw-readings.ts';

/**
 * Keeps raw readings on disk by station while files are read, so that memory doesn't grow with the number of stations
 * and a station may come from several files.
 */
export class Spool {
  readonly #files = new Map<string, string>();

  constructor(private readonly folder: string) {}

  /** Ids of all stations seen, in the order of their first file. */
  get stations(): string[] {
    return [...this.#files.keys()];
  }

  async add(readings: RawReadings): Promise<void> {
    const { id } = readings.station;
    let file = this.#files.get(id);
    if (!file) {
      await mkdir(this.folder, { recursive: true });
      file = path.join(this.folder, `${this.#files.size}.bin`);
      this.#files.set(id, file);
    }
    const body = serialize(readings);
    const length = Buffer.alloc(4);
    length.writeUInt32LE(body.length);
    await appendFile(file, Buffer.concat([length, body]));
  }

  async take(id: string): Promise<RawReadings[]> {
    const file = this.#files.get(id);
    if (!file) return [];
    const bytes = await readFile(file);
    await rm(file);
    const readings: RawReadings[] = [];
    for (let at = 0; at < bytes.length;) {
      const length = bytes.readUInt32LE(at);
      readings.push(deserialize(bytes.subarray(at + 4, at + 4 + length)) as RawReadings);
      at += 4 + length;
    }
    return readings;
  }
}
