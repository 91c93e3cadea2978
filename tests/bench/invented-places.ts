import type { FeatureCollection } from 'geojson';
import { landForMap } from '../../data-scripts/build/outlines.ts';
import { widened, type PackBox } from '../../analysis/gather/pack-box.ts';
import type { PackPlaces, PackStation } from '../../analysis/records/pack.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';

/** Postcodes a station: the United States have 33,000 for some 5,000 stations with long records. */
const CODES_A_STATION = 7;

/** As far as postcodes lie from their station, degrees. */
const AROUND_DEG = 0.3;

/** Outlines are those of a real coast this many degrees to the west of the invented land, moved onto it: as many corners as real ones have. */
const MOVED_DEG = 46;

/** Invented postcodes, as many as a real region of so many stations has. */
export function inventedPlaces(stations: readonly PackStation[]): PackPlaces {
  const random = seededRandom(80);
  const near = (degrees: number): number =>
    Math.round(1e4 * (degrees + AROUND_DEG * (2 * random.uniform() - 1))) / 1e4;
  return {
    postcodes: stations.flatMap(({ name, lat, lon }, i) =>
      Array.from({ length: CODES_A_STATION }, (_, n) => ({
        code: String(10_000 + i * CODES_A_STATION + n),
        name: `${name}, ZZ`,
        lat: near(lat),
        lon: near(lon),
      })),
    ),
    towns: [],
  };
}

/** Outlines for a box of the invented land. */
export function inventedOutlines(box: PackBox): FeatureCollection {
  const [west, south, east, north] = widened(box, 1);
  return moved(landForMap([west - MOVED_DEG, south, east - MOVED_DEG, north])) as FeatureCollection;
}

/** Every position in a GeoJSON object moved to the east. */
function moved(value: unknown): unknown {
  if (!Array.isArray(value)) {
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, moved(part)]));
  }
  const [lon, lat] = value as unknown[];
  return typeof lon === 'number' && typeof lat === 'number' ? [lon + MOVED_DEG, lat] : value.map(moved);
}
