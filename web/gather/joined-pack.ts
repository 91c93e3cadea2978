import type { FeatureCollection } from 'geojson';
import type { JoinedPack } from '../../analysis/gather/assemble-pack.ts';
import { t } from '../../analysis/language/t.ts';
import { decodeGrid } from '../../analysis/records/grid.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { checkManifest, type PackPlaces, type PackStation } from '../../analysis/records/pack.ts';
import { decodeWinterTile } from '../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { reach } from '../data/reach.ts';
import { formatBytes } from '../format/numbers.ts';
import { JOINED_BYTES_MAX } from './limits.ts';

/** Tiles fetched at a time. */
const AT_ONCE = 6;

/**
 * Everything of a pack but its nights.
 * @param url address of its folder, ending in `/`
 * @throws InputError when a file can't be loaded, or the pack is too large to be joined
 */
export async function loadJoined(
  url: string,
  fetcher: (url: string) => Promise<Response>,
): Promise<{ pack: JoinedPack; land: FeatureCollection | null }> {
  const get = async (name: string): Promise<Response> => reach(url + name, fetcher);
  const manifest = checkManifest(await (await get('pack.json')).json(), 'pack.json');
  const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
  if (bytes > JOINED_BYTES_MAX) {
    const [size, most] = [formatBytes(bytes), formatBytes(JOINED_BYTES_MAX)];
    throw new InputError(
      t`“${manifest.title}” has ${size}; a pack of more than ${most} can't be joined here. Use the files alone.`,
    );
  }
  const has = (name: string): boolean => manifest.files.some(({ path }) => path === name);
  const stations = (await (await get('stations.json')).json()) as readonly PackStation[];
  const winters = new Map<string, WinterTable>();
  const tiles = [...new Set(stations.map(({ tile }) => `winters/${tile}.arrow`))];
  for (let from = 0; from < tiles.length; from += AT_ONCE) {
    const some = tiles.slice(from, from + AT_ONCE).map(async (name) => {
      const tile = decodeWinterTile(new Uint8Array(await (await get(name)).arrayBuffer()), name);
      for (const [id, table] of tile) winters.set(id, table);
    });
    await Promise.all(some);
  }
  const missing = stations.find(({ id }) => !winters.has(id));
  if (missing) throw new InputError(t`“${manifest.title}” holds no winters of station ${missing.id}.`);
  return {
    pack: {
      manifest,
      stations,
      winters,
      places: has('places.json') ? ((await (await get('places.json')).json()) as PackPlaces) : null,
      grid: has('grid.bin')
        ? decodeGrid(new Uint8Array(await (await get('grid.bin')).arrayBuffer()), 'grid.bin')
        : null,
    },
    land: has('land.json') ? ((await (await get('land.json')).json()) as FeatureCollection) : null,
  };
}
