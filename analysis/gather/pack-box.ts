import type { PackManifest } from '../records/pack.ts';

/** West, south, east, north in degrees. */
export type PackBox = PackManifest['bbox'];

/** The smallest box around some places. */
export function boxOf(places: readonly { readonly lat: number; readonly lon: number }[]): PackBox {
  const lats = places.map(({ lat }) => lat);
  const lons = places.map(({ lon }) => lon);
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}

/** The box with so many degrees of room on each side. */
export function widened([west, south, east, north]: PackBox, byDegrees: number): PackBox {
  return [west - byDegrees, south - byDegrees, east + byDegrees, north + byDegrees];
}
