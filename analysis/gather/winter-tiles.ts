import type { PackStation } from '../records/pack.ts';
import { encodeWinterTile } from '../records/winter-tile.ts';
import type { WinterTable } from '../records/winters.ts';

/** The winters tiles of a pack, by their path in it (`winters/n30w042.arrow`). */
export function winterTiles(
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): Map<string, Uint8Array> {
  const tiles = new Map<string, Uint8Array>();
  for (const tile of new Set(stations.map((station) => station.tile))) {
    const inside = stations.filter((station) => station.tile === tile);
    const tables = new Map(inside.map(({ id }) => [id, winters.get(id)!]));
    tiles.set(`winters/${tile}.arrow`, encodeWinterTile(tables));
  }
  return tiles;
}
