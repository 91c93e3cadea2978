import type { FeatureCollection } from 'geojson';
import type { OpenPack, PackEntry, PackMeta, PackPlaces, PackStation } from './pack-types.ts';

/** Schema versions this page reads: the current one and the one before. */
const SCHEMAS = [0, 1];
const NO_PLACES: PackPlaces = { postcodes: [], towns: [] };

/** A pack that can't be shown; the message is one sentence for the reader. */
export class PackError extends Error {
  override readonly name = 'PackError';
}

/** The part of `fetch` this needs. */
export type Fetcher = (url: string) => Promise<{
  readonly ok: boolean;
  readonly status: number;
  json(): Promise<unknown>;
}>;

async function readJson(url: string, fetcher: Fetcher): Promise<unknown> {
  const name = url.slice(url.lastIndexOf('/') + 1);
  let response;
  try {
    response = await fetcher(url);
  } catch {
    throw new PackError(`${name} could not be reached; the connection may be down.`);
  }
  if (!response.ok)
    throw new PackError(`${name} could not be loaded: the server answered ${response.status}.`);
  try {
    return await response.json();
  } catch {
    throw new PackError(`${name} arrived damaged: it is not the JSON it should be.`);
  }
}

/** The packs a site carries, default first. `base` is the absolute address of the folder `packs/`. */
export async function loadPackIndex(base: string, fetcher: Fetcher): Promise<readonly PackEntry[]> {
  const list = await readJson(new URL('index.json', base).href, fetcher);
  if (!Array.isArray(list) || list.length === 0) throw new PackError('index.json lists no record pack.');
  return list as PackEntry[];
}

/** Open one pack: metadata, stations, outlines, place names. A pack without outlines or places is still whole. */
export async function loadPack(base: string, entry: PackEntry, fetcher: Fetcher): Promise<OpenPack> {
  const url = new URL(`${entry.path.replace(/\/?$/, '')}/`, base).href;
  const part = (name: string): Promise<unknown> => readJson(url + name, fetcher);
  const [meta, stations, land, places] = await Promise.all([
    part('pack.json') as Promise<PackMeta>,
    part('stations.json') as Promise<PackStation[]>,
    part('land.json').catch(() => null) as Promise<FeatureCollection | null>,
    part('places.json').catch(() => NO_PLACES) as Promise<PackPlaces>,
  ]);
  if (!SCHEMAS.includes(meta.schema)) {
    throw new PackError(
      `“${entry.title}” is written in version ${meta.schema} of the pack format; this page reads up to ${SCHEMAS.at(-1)}.`,
    );
  }
  if (!Array.isArray(stations) || stations.length === 0) {
    throw new PackError(`“${entry.title}” holds no station.`);
  }
  return { entry, url, meta, stations, land, places };
}
