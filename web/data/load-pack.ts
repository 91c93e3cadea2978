import { t } from '../../analysis/language/t.ts';
import type { FeatureCollection } from 'geojson';
import { InputError } from '../../analysis/records/input-error.ts';
import {
  checkManifest,
  type PackIndexEntry,
  type PackPlaces,
  type PackStation,
} from '../../analysis/records/pack.ts';
import type { OpenPack } from './open-pack.ts';
import { fileName, reach } from './reach.ts';

const NO_PLACES: PackPlaces = { postcodes: [], towns: [] };

/** The part of `fetch` this needs. */
export type Fetcher = (url: string) => Promise<{
  readonly ok: boolean;
  readonly status: number;
  json(): Promise<unknown>;
}>;

/** @throws InputError with one sentence for the reader: not reached, refused, or damaged */
async function readJson(url: string, fetcher: Fetcher): Promise<unknown> {
  const response = await reach(url, fetcher);
  try {
    return await response.json();
  } catch {
    throw new InputError(t`${fileName(url)} arrived damaged: it is not the JSON it should be.`);
  }
}

/** The packs a site carries, default first. `base` is the absolute address of the folder `packs/`. */
export async function loadPackIndex(base: string, fetcher: Fetcher): Promise<readonly PackIndexEntry[]> {
  const list = await readJson(new URL('index.json', base).href, fetcher);
  const entries = Array.isArray(list) ? list.filter(isEntry) : [];
  if (entries.length === 0) throw new InputError(t`index.json lists no record pack.`);
  return entries;
}

function isEntry(value: Partial<PackIndexEntry> | null): value is PackIndexEntry {
  return [value?.id, value?.path, value?.title].every((text) => typeof text === 'string');
}

/** Absolute address of a pack's folder, with the slash. */
export function packUrl(base: string, { path }: Pick<PackIndexEntry, 'path'>): string {
  return new URL(`${path.replace(/\/?$/, '')}/`, base).href;
}

/** Open one pack: manifest, stations, outlines, place names. A pack without outlines or places is still whole. */
export async function loadPack(base: string, entry: PackIndexEntry, fetcher: Fetcher): Promise<OpenPack> {
  const url = packUrl(base, entry);
  const part = (name: string): Promise<unknown> => readJson(url + name, fetcher);
  const [manifest, stations, land, places] = await Promise.all([
    part('pack.json'),
    part('stations.json') as Promise<readonly PackStation[]>,
    part('land.json').catch(() => null) as Promise<FeatureCollection | null>,
    part('places.json').catch(() => NO_PLACES) as Promise<PackPlaces>,
  ]);
  const meta = checkManifest(manifest, `${entry.path}/pack.json`);
  if (!Array.isArray(stations) || stations.length === 0) {
    throw new InputError(t`“${entry.title}” holds no station.`);
  }
  return { entry, url, meta, stations, land, places };
}
