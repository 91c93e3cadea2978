import { readFile, rename, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import type { ChosenStation } from '../../analysis/archive/choose-stations.ts';
import { GHCN_DAILY_SOURCE } from '../../analysis/archive/layout.ts';
import type { CheckedOptions } from './fetch-options.ts';
import type { BodyDescription } from './partial-file.ts';
import { TERRAIN_TILES_SOURCE } from './terrain-tiles.ts';

/** A fetched file, as `sources.json` keeps it: where it came from and what the archive said of it. */
interface FileEntry {
  readonly path: string;
  readonly url: string;
  readonly bytes: number;
  readonly etag: string | null;
  readonly last_modified: string | null;
}

/** `sources.json`: provenance for a pack, and what a later run needs to ask only for what has changed. */
export class SourcesFile {
  readonly #folder: string;
  readonly #files = new Map<string, FileEntry>();

  private constructor(folder: string) {
    this.#folder = folder;
  }

  /** Reads what an earlier run left; an unreadable file counts as none. */
  static async open(folder: string): Promise<SourcesFile> {
    const sources = new SourcesFile(folder);
    try {
      const { files } = JSON.parse(await readFile(join(folder, 'sources.json'), 'utf8'));
      for (const entry of files as FileEntry[]) sources.#files.set(entry.path, entry);
    } catch {
      // The first run, or a file that isn't ours: everything is fetched anew.
    }
    return sources;
  }

  /** What is known of a file, if it is still there in its length. */
  async known(path: string, url: string): Promise<BodyDescription | undefined> {
    const entry = this.#files.get(path);
    if (entry === undefined || entry.url !== url) return undefined;
    const found = await stat(join(this.#folder, path)).catch(() => undefined);
    if (found?.size !== entry.bytes) return undefined;
    return { url, etag: entry.etag ?? undefined, lastModified: entry.last_modified ?? undefined };
  }

  /** Notes a file that has just come. */
  async add(path: string, { url, etag, lastModified }: BodyDescription): Promise<void> {
    const { size } = await stat(join(this.#folder, path));
    const entry = { path, url, bytes: size, etag: etag ?? null, last_modified: lastModified ?? null };
    this.#files.set(path, entry);
  }

  /** Writes the file, whole at once. */
  async write(
    options: CheckedOptions,
    stations: readonly (ChosenStation & { tminDays: number })[],
    missing: readonly string[],
  ): Promise<void> {
    const content = {
      sources: [GHCN_DAILY_SOURCE, ...(options.elevation ? [TERRAIN_TILES_SOURCE] : [])],
      archive: options.archive,
      near: [options.near.lat, options.near.lon],
      km: options.km,
      stations: stations.map((station) => ({
        id: station.id,
        distance_km: Math.round(station.distanceKm * 10) / 10,
        first_year: station.firstYear,
        last_year: station.lastYear,
        tmin_days: station.tminDays,
      })),
      missing,
      files: [...this.#files.values()].sort((a, b) => (a.path < b.path ? -1 : 1)),
    };
    await writeWhole(join(this.#folder, 'sources.json'), `${JSON.stringify(content, null, 2)}\n`);
  }
}

/** Writes a text under a temporary name and renames it. */
export async function writeWhole(path: string, text: string): Promise<void> {
  await writeFile(`${path}.tmp`, text);
  await rename(`${path}.tmp`, path);
}
