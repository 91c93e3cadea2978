import type { WinterSource } from '../../../analysis/answer/place-histories.ts';
import type { PlaceParameters } from '../../../analysis/place/place-parameters.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import type { PlaceGrid } from '../../../analysis/records/grid.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import { tileOf } from '../../../analysis/records/winter-tile.ts';

/** What a pack tells of a station that has these winters. */
export function inventedStation({ id, site, winters }: Member): PackStation {
  return {
    id,
    name: `Invented ${id}`,
    lat: site.lat,
    lon: site.lon,
    elevation_m: site.elevationM,
    coast_km: site.coastKm,
    winters: {
      complete: winters.complete.reduce((sum, whole) => sum + whole, 0),
      first: winters.winter[0],
      last: winters.winter.at(-1)!,
    },
    basis: 'daily',
    tile: tileOf(site.lat, site.lon),
  };
}

/** A pack in memory that answers from these members; `read` lists the stations whose winters were asked for. */
export function inventedSource(
  members: readonly Member[],
  { place = null, grid = null }: { place?: PlaceParameters | null; grid?: PlaceGrid | null } = {},
): WinterSource & { readonly read: string[] } {
  const stations = members.map(inventedStation);
  const tables = new Map(members.map(({ id, winters }) => [id, winters]));
  const read: string[] = [];
  return {
    stations,
    place,
    read,
    winters: async ({ id }) => {
      read.push(id);
      return tables.get(id)!;
    },
    grid: async () => grid,
  };
}

/** Cells over a box, all land, flat unless told. */
export function inventedGrid(
  layout: Pick<PlaceGrid, 'columns' | 'rows' | 'west' | 'south' | 'stepLonDeg' | 'stepLatDeg'>,
  heightM: (cell: number) => number = () => 0,
): PlaceGrid {
  const cells = layout.columns * layout.rows;
  return {
    ...layout,
    elevationM: Float32Array.from({ length: cells }, (_, cell) => heightM(cell)),
    coastKm: new Float32Array(cells).fill(NaN),
    land: new Uint8Array(cells).fill(1),
  };
}
