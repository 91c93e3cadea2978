import type { PlaceGrid } from '../records/grid.ts';
import type { PackStation } from '../records/pack.ts';

/** Cells of a grid that stands in for a pack's own, about so many. */
const CELLS = 10_000;
/** Room around the outermost stations, degrees. */
const MARGIN_DEG = 0.3;

/**
 * Cells over the box of the stations for a pack without elevations: all count as land (the outlines cut them on the map),
 * height unknown, distance to the coast as near stations have it. A box across the antimeridian runs on past 180.
 */
export function plainGrid(stations: readonly PackStation[]): PlaceGrid {
  const south = Math.max(-85, Math.min(...stations.map(({ lat }) => lat)) - MARGIN_DEG);
  const north = Math.min(85, Math.max(...stations.map(({ lat }) => lat)) + MARGIN_DEG);
  const { west, span } = narrowestSpan(stations.map(({ lon }) => lon));
  const height = north - south;
  const width = span + 2 * MARGIN_DEG;
  const squeeze = Math.cos(((south + north) / 2) * (Math.PI / 180));
  const stepLatDeg = Math.sqrt((height * width * squeeze) / CELLS);
  const stepLonDeg = stepLatDeg / squeeze;
  const columns = Math.max(1, Math.ceil(width / stepLonDeg));
  const rows = Math.max(1, Math.ceil(height / stepLatDeg));
  const cells = columns * rows;
  return {
    columns,
    rows,
    west: west - MARGIN_DEG + stepLonDeg / 2,
    south: south + stepLatDeg / 2,
    stepLonDeg,
    stepLatDeg,
    elevationM: new Float32Array(cells).fill(NaN),
    coastKm: new Float32Array(cells).fill(NaN),
    land: new Uint8Array(cells).fill(1),
  };
}

/** The shortest stretch of longitudes that holds all, found by its widest gap. */
function narrowestSpan(lons: readonly number[]): { west: number; span: number } {
  const sorted = [...lons].sort((a, b) => a - b);
  let west = sorted[0];
  let widest = sorted[0] + 360 - sorted.at(-1)!;
  for (let i = 1; i < sorted.length; i++) {
    const gap = sorted[i] - sorted[i - 1];
    if (gap <= widest) continue;
    widest = gap;
    west = sorted[i];
  }
  return { west, span: 360 - widest };
}
