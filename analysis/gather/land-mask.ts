import { boxOfRing, type LandRings } from './land-outlines.ts';

/** Height of the bands by which edges are found, degrees of latitude. */
const BAND_DEGREES = 0.25;
const BANDS = 180 / BAND_DEGREES;

/**
 * Tells land from sea, row by row: along a parallel, land lies between every other pair of shores (even-odd rule). It may be made
 * for some latitudes only; others can't be asked about then.
 */
export class LandMask {
  readonly #edges: (readonly [x1: number, y1: number, x2: number, y2: number])[] = [];
  readonly #bands: number[][] = Array.from({ length: BANDS }, () => []);

  constructor(
    rings: LandRings,
    private readonly lowestLat = -90,
    private readonly highestLat = 90,
  ) {
    for (const ring of rings) {
      const [west, south, east, north] = boxOfRing(ring);
      if (south > highestLat || north < lowestLat) continue;
      const turns = [0, ...(east > 180 ? [-360] : []), ...(west < -180 ? [360] : [])];
      for (const turn of turns) this.#add(ring, turn);
    }
  }

  #add(ring: LandRings[number], turn: number): void {
    for (let i = 1; i < ring.length; i++) {
      const [y1, y2] = [ring[i - 1][1], ring[i][1]];
      if (y1 === y2 || Math.min(y1, y2) > this.highestLat || Math.max(y1, y2) < this.lowestLat) continue;
      const index = this.#edges.push([ring[i - 1][0] + turn, y1, ring[i][0] + turn, y2]) - 1;
      const last = bandOf(Math.max(y1, y2));
      for (let band = bandOf(Math.min(y1, y2)); band <= last; band++) this.#bands[band].push(index);
    }
  }

  /** The parallel at a latitude: tells of each longitude (any turn) whether it lies on land. */
  parallel(lat: number): (lon: number) => boolean {
    const shores: number[] = [];
    for (const index of this.#bands[bandOf(lat)]) {
      const [x1, y1, x2, y2] = this.#edges[index];
      if (y1 > lat !== y2 > lat) shores.push(x1 + ((x2 - x1) * (lat - y1)) / (y2 - y1));
    }
    shores.sort((a, b) => a - b);
    return (lon) => countUpTo(shores, ((((lon + 180) % 360) + 360) % 360) - 180) % 2 === 1;
  }

  has(lat: number, lon: number): boolean {
    return this.parallel(lat)(lon);
  }
}

function bandOf(lat: number): number {
  return Math.max(0, Math.min(BANDS - 1, Math.floor((lat + 90) / BAND_DEGREES)));
}

/** How many of the sorted values are at or below a limit. */
function countUpTo(sorted: readonly number[], limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
