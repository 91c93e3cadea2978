import type { PackStation } from '../records/pack.ts';
import type { LocatedStation } from '../records/station.ts';
import type { WinterTable } from '../records/winters.ts';

/**
 * An entry of `stations.json`.
 * @param coastKm distance to the nearest shore, infinite where no shore is known
 */
export function packStation(
  { id, name, lat, lon, elevationM }: LocatedStation,
  basis: PackStation['basis'],
  coastKm: number,
  winters: WinterTable,
  tile: string,
): PackStation {
  const complete = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  return {
    id,
    name: name || id,
    lat,
    lon,
    elevation_m: elevationM,
    coast_km: Number.isFinite(coastKm) ? Math.round(coastKm * 10) / 10 : null,
    winters: { complete: complete.length, first: complete[0] ?? null, last: complete.at(-1) ?? null },
    basis,
    tile,
  };
}
