import type { PackStation } from '../../../analysis/records/pack.ts';
import type { OpenPack } from '../../../web/data/open-pack.ts';

/** A made-up station with so many complete winters. */
export function station(id: string, name: string, lat: number, lon: number, complete: number): PackStation {
  return {
    id,
    name,
    lat,
    lon,
    elevation_m: 10,
    coast_km: 5,
    winters: { complete, first: complete > 0 ? 2000 : null, last: complete > 0 ? 1999 + complete : null },
    basis: 'daily',
    tile: 'n30w042',
  };
}

/** A small made-up pack in mid-ocean. */
export const PACK: OpenPack = {
  entry: {
    id: 'made-up',
    title: 'Made-up coast',
    invented: true,
    path: 'made-up',
    bytes: 0,
    stations: 4,
    winters: { first: 1960, last: 2020 },
  },
  url: 'http://localhost/packs/made-up/',
  meta: {
    schema: 1,
    id: 'made-up',
    title: 'Made-up coast',
    invented: true,
    hemisphere: 'north',
    bbox: [-43, 30, -41, 32],
    winters: { first: 1960, last: 2020 },
    stations: { count: 4 },
    sources: [],
    files: [],
    dropped: {},
    doubtful: {},
    notes: [],
  },
  stations: [
    station('ZZ1', 'Harbour', 31.0, -42.0, 60),
    station('ZZ2', 'New Field', 31.1, -42.0, 3),
    station('ZZ3', 'Hill Farm', 31.3, -42.2, 45),
    station('ZZ4', 'Far Isle', 30.1, -41.0, 0),
  ],
  land: null,
  places: {
    postcodes: [
      { code: 'SC 101', name: 'Harbour Side', lat: 31.01, lon: -42.01 },
      { code: 'SC 117', name: 'Newfield', lat: 31.11, lon: -42.0 },
    ],
    towns: [
      { name: 'Hillé', lat: 31.3, lon: -42.2, rank: 2 },
      { name: 'Made Town', lat: 31.0, lon: -42.02, rank: 1 },
    ],
  },
};
