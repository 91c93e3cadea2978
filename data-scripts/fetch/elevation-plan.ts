import { tileX, tileY } from './terrain-tiles.ts';

/** Room around the stations, km: the grid of a pack reaches 30 km beyond them. */
const MARGIN_KM = 40;
const KM_PER_DEGREE = 111.195;
const FINEST_ZOOM = 9;
const COARSEST_ZOOM = 4;
/** Most tiles of one fetch; a wider box gets coarser ones. */
const MOST_TILES = 160;
const PIXELS_PER_TILE = 256;

/** Tiles for a box, and the grid of degrees they are written out as. */
export interface ElevationPlan {
  readonly zoom: number;
  readonly firstX: number;
  readonly lastX: number;
  readonly firstY: number;
  readonly lastY: number;
  /** South-west corner of the grid, degrees; the longitude may run on beyond 180 from there. */
  readonly west: number;
  readonly south: number;
  readonly stepDeg: number;
  readonly columns: number;
  readonly rows: number;
}

/**
 * Chooses tiles over the stations and 40 km around: as fine as 160 tiles allow, at best about 250 m a pixel (zoom 9), so that a
 * region gets 250 to 1,000 m. Columns of tiles run on beyond the last where the box crosses the antimeridian.
 */
export function planElevation(stations: readonly { lat: number; lon: number }[]): ElevationPlan {
  const lats = stations.map(({ lat }) => lat);
  const marginLat = MARGIN_KM / KM_PER_DEGREE;
  const south = Math.max(-84.9, Math.min(...lats) - marginLat);
  const north = Math.min(84.9, Math.max(...lats) + marginLat);
  const marginLon = marginLat / Math.cos((Math.max(Math.abs(south), Math.abs(north)) * Math.PI) / 180);
  const { first, span } = narrowest(stations.map(({ lon }) => lon));
  const [west, width] = [first - marginLon, Math.min(360, span + 2 * marginLon)];
  for (let zoom = FINEST_ZOOM; ; zoom--) {
    const firstX = Math.floor(tileX(west, zoom));
    const lastX = Math.ceil(tileX(west + width, zoom)) - 1;
    const [firstY, lastY] = [Math.floor(tileY(north, zoom)), Math.ceil(tileY(south, zoom)) - 1];
    if (zoom > COARSEST_ZOOM && (lastX - firstX + 1) * (lastY - firstY + 1) > MOST_TILES) continue;
    const stepDeg = 360 / (PIXELS_PER_TILE * 2 ** zoom);
    const [columns, rows] = [Math.ceil(width / stepDeg), Math.ceil((north - south) / stepDeg)];
    return { zoom, firstX, lastX, firstY, lastY, west, south, stepDeg, columns, rows };
  }
}

/** The narrowest span of meridians that holds all longitudes. */
function narrowest(lons: readonly number[]): { first: number; span: number } {
  const sorted = [...new Set(lons)].sort((a, b) => a - b);
  const gaps = sorted.map((lon, i) => (i + 1 < sorted.length ? sorted[i + 1] : sorted[0] + 360) - lon);
  const widest = gaps.indexOf(Math.max(...gaps));
  return { first: sorted[(widest + 1) % sorted.length], span: 360 - gaps[widest] };
}
