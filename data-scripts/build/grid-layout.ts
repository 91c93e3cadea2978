import { InputError } from '../../analysis/records/input-error.ts';
import type { PlaceGrid } from '../../analysis/records/grid.ts';
import type { LandMask } from '../../analysis/gather/land-mask.ts';

export type GridLayout = Pick<PlaceGrid, 'columns' | 'rows' | 'west' | 'south' | 'stepLonDeg' | 'stepLatDeg'>;

/** Answers reach this far beyond the outermost stations on the map, km. */
const MARGIN_KM = 30;
/** Cells on land that a grid aims at, and the most it has in all where little of its box is land. */
const LAND_CELLS = 10_000;
const MOST_CELLS = 40_000;
/** Parallels and meridians by which the share of land is judged. */
const SAMPLES = 150;
/** Beyond this latitude cells would be slivers, degrees. */
const FARTHEST_LAT = 85;
const KM_PER_DEGREE = 111.195;

interface Place {
  readonly lat: number;
  readonly lon: number;
}

/**
 * Lays cells over the stations' box and 30 km around it: about as long as wide on the ground in the middle of the box, so
 * many that about 10,000 of them lie on land, but at most 40,000 in all. The box is the narrower one where stations lie
 * on both sides of the antimeridian.
 * @throws InputError when all stations stand so near a pole that there is no such box
 */
export function layGrid(stations: readonly Place[], mask: LandMask): GridLayout {
  const box = boxAround(stations);
  const middle = Math.cos((((box.south + box.north) / 2) * Math.PI) / 180);
  const kmPerLon = KM_PER_DEGREE * Math.max(0.05, middle);
  const areaKm2 = (box.north - box.south) * KM_PER_DEGREE * (box.east - box.west) * kmPerLon;
  const landShare = shareOfLand(box, mask);
  const wanted = landShare > 0 ? Math.min(MOST_CELLS, LAND_CELLS / landShare) : LAND_CELLS;
  const cellKm = Math.sqrt(areaKm2 / wanted);
  const columns = Math.max(2, Math.floor(((box.east - box.west) * kmPerLon) / cellKm));
  const rows = Math.max(2, Math.floor(((box.north - box.south) * KM_PER_DEGREE) / cellKm));
  const stepLonDeg = (box.east - box.west) / columns;
  const stepLatDeg = (box.north - box.south) / rows;
  return {
    columns,
    rows,
    west: turned(box.west + stepLonDeg / 2),
    south: box.south + stepLatDeg / 2,
    stepLonDeg,
    stepLatDeg,
  };
}

/** Edges of the box in degrees; `east` runs on beyond 180 where the box crosses the antimeridian. */
function boxAround(stations: readonly Place[]) {
  const lats = stations.map(({ lat }) => lat);
  const marginLat = MARGIN_KM / KM_PER_DEGREE;
  const south = Math.max(-FARTHEST_LAT, Math.min(...lats) - marginLat);
  const north = Math.min(FARTHEST_LAT, Math.max(...lats) + marginLat);
  if (!(north > south)) {
    throw new InputError(
      `no grid of cells can be laid beyond ${FARTHEST_LAT} degrees of latitude, where all stations stand`,
    );
  }
  const lons = [...new Set(stations.map(({ lon }) => turned(lon)))].sort((a, b) => a - b);
  // The widest gap between neighbours is outside: the box begins behind it.
  const gaps = lons.map((lon, i) => (i + 1 < lons.length ? lons[i + 1] : lons[0] + 360) - lon);
  const widest = gaps.indexOf(Math.max(...gaps));
  const first = lons[(widest + 1) % lons.length];
  const span = 360 - gaps[widest];
  const steepest = Math.cos((Math.max(Math.abs(south), Math.abs(north)) * Math.PI) / 180);
  const marginLon = marginLat / steepest;
  const width = Math.min(360, span + 2 * marginLon);
  const west = first + span / 2 - width / 2;
  return { west, south, east: west + width, north };
}

function shareOfLand(box: ReturnType<typeof boxAround>, mask: LandMask): number {
  let land = 0;
  for (let r = 0; r < SAMPLES; r++) {
    const isLand = mask.parallel(box.south + ((r + 0.5) / SAMPLES) * (box.north - box.south));
    for (let c = 0; c < SAMPLES; c++) {
      if (isLand(box.west + ((c + 0.5) / SAMPLES) * (box.east - box.west))) land++;
    }
  }
  return land / (SAMPLES * SAMPLES);
}

/** The same meridian from -180 to below 180. */
function turned(lon: number): number {
  return ((((lon + 180) % 360) + 360) % 360) - 180;
}
