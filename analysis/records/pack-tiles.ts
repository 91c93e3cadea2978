import { tileOf } from './winter-tile.ts';

/** Stations that a winters tile holds at most where it can be quartered: about 200 kB with 60 winters each. */
const MOST_STATIONS_IN_TILE = 12;
/** A tile is quartered so often at most: to an eighth of a degree. */
const MOST_QUARTERINGS = 4;
const SIDE_DEGREES = 2;

interface Placed {
  readonly id: string;
  readonly lat: number;
  readonly lon: number;
}

/**
 * The winters tile of each station, by id: that of its 2 by 2 degrees (`n30w042`), and where many stations lie close
 * together its quarters, and theirs (`n30w042-13`), so that a point of a dense network needs few bytes. Quarters are
 * numbered 0 to 3: south-west, south-east, north-west, north-east.
 */
export function packTiles(stations: readonly Placed[]): Map<string, string> {
  const tiles = new Map<string, string>();
  const byTile = new Map<string, Placed[]>();
  for (const station of stations) {
    const tile = tileOf(station.lat, station.lon);
    byTile.set(tile, [...(byTile.get(tile) ?? []), station]);
  }
  for (const [tile, within] of byTile) spread(tile, within, 0, tiles);
  return tiles;
}

function spread(
  tile: string,
  stations: readonly Placed[],
  quarterings: number,
  tiles: Map<string, string>,
): void {
  if (stations.length <= MOST_STATIONS_IN_TILE || quarterings === MOST_QUARTERINGS) {
    for (const { id } of stations) tiles.set(id, tile);
    return;
  }
  const side = SIDE_DEGREES / 2 ** (quarterings + 1);
  const half = (degrees: number) => ((Math.floor(degrees / side) % 2) + 2) % 2;
  for (let quarter = 0; quarter < 4; quarter++) {
    const own = stations.filter(({ lat, lon }) => 2 * half(lat) + half(lon) === quarter);
    const name = quarterings === 0 ? `${tile}-${quarter}` : `${tile}${quarter}`;
    if (own.length > 0) spread(name, own, quarterings + 1, tiles);
  }
}
