import type { Position } from 'geojson';
import { around } from 'geokdbush';
import KDBush from 'kdbush';
import { distanceKm } from '../place/distance.ts';
import { LandMask } from './land-mask.ts';
import { boxOfRing, type LandRings } from './land-outlines.ts';

/** Longest step between the points that stand for the coast, km. */
export const STEP_KM = 4;
/** Nearer than this the distance goes to the shore line itself; beyond it the nearest point is right to 0.1 km. */
const EXACT_KM = 25;
export const KM_PER_DEGREE = 111.195;

interface Place {
  readonly lat: number;
  readonly lon: number;
}

/** Which part of the world's shores is looked at, for places of some latitudes only. */
export interface ShorePart {
  readonly lowestLat: number;
  readonly highestLat: number;
  /** Whether a piece of shore inside a box (west, south, east, north) may count. */
  readonly counts: (west: number, south: number, east: number, north: number) => boolean;
}

/**
 * Distances in km from places to the nearest shore, anywhere on Earth: 0 on the sea, infinite where there are no
 * outlines at all. Right to about 0.1 km of what the outlines draw.
 */
export class CoastDistance {
  readonly mask: LandMask;
  readonly #points: Place[] = [];
  /** Number of the point that follows along the shore; -1 at the end of a ring. */
  readonly #next: number[] = [];
  readonly #index: KDBush;

  constructor(
    rings: LandRings,
    private readonly part: ShorePart | null = null,
  ) {
    this.mask = new LandMask(rings, part?.lowestLat, part?.highestLat);
    for (const ring of rings) if (!part || part.counts(...boxOfRing(ring))) this.#addRing(ring);
    this.#index = new KDBush(Math.max(1, this.#points.length));
    for (const { lat, lon } of this.#points) this.#index.add(lon, lat);
    if (this.#points.length === 0) this.#index.add(0, 0);
    this.#index.finish();
  }

  #addRing(ring: LandRings[number]): void {
    let open = false;
    for (let i = 0; i + 1 < ring.length; i++) {
      const [x1, y1, x2, y2] = [ring[i][0], ring[i][1], ring[i + 1][0], ring[i + 1][1]];
      const [west, east] = x1 < x2 ? [x1, x2] : [x2, x1];
      const outside = this.part !== null && !this.part.counts(west, Math.min(y1, y2), east, Math.max(y1, y2));
      if (outside || isCut(ring[i], ring[i + 1])) {
        if (open) this.#endAt(x1, y1);
        open = false;
        continue;
      }
      open = true;
      const km = KM_PER_DEGREE * Math.hypot(y2 - y1, (x2 - x1) * Math.cos((y1 * Math.PI) / 180));
      const steps = Math.max(1, Math.ceil(km / STEP_KM));
      for (let s = 0; s < steps; s++)
        this.#addPoint(x1 + ((x2 - x1) * s) / steps, y1 + ((y2 - y1) * s) / steps);
    }
    if (open) this.#endAt(ring[ring.length - 1][0], ring[ring.length - 1][1]);
  }

  #endAt(lon: number, lat: number): void {
    this.#addPoint(lon, lat);
    this.#next[this.#next.length - 1] = -1;
  }

  #addPoint(lon: number, lat: number): void {
    this.#next.push(this.#points.length + 1);
    this.#points.push({ lat, lon: ((((lon + 180) % 360) + 360) % 360) - 180 });
  }

  /** Distance of a place to the nearest shore, km; 0 on the sea. */
  of(place: Place, onLand = this.mask.has(place.lat, place.lon)): number {
    return onLand ? this.toShore(place) : 0;
  }

  /** Distance to the nearest shore, km, from land and sea alike. */
  toShore({ lat, lon: anyLon }: Place): number {
    if (this.#points.length === 0) return Infinity;
    const lon = ((((anyLon + 180) % 360) + 360) % 360) - 180;
    const [nearest] = around(this.#index, lon, lat, 1);
    let best = distanceKm({ lat, lon }, this.#points[nearest]);
    if (best > EXACT_KM) return best;
    for (const i of around(this.#index, lon, lat, Infinity, best + STEP_KM / 2)) {
      best = Math.min(best, this.#toSegment(i, lat, lon));
      if (i > 0 && this.#next[i - 1] === i) best = Math.min(best, this.#toSegment(i - 1, lat, lon));
    }
    return best;
  }

  /** Distance to the piece of shore that begins at point `i`, on the plane that touches the place. */
  #toSegment(i: number, lat: number, lon: number): number {
    const { x: x1, y: y1 } = onPlane(this.#points[i], lat, lon);
    if (this.#next[i] < 0) return Math.hypot(x1, y1);
    const { x: x2, y: y2 } = onPlane(this.#points[this.#next[i]], lat, lon);
    const [dx, dy] = [x2 - x1, y2 - y1];
    const length = dx * dx + dy * dy;
    const share = length === 0 ? 0 : Math.max(0, Math.min(1, -(x1 * dx + y1 * dy) / length));
    return Math.hypot(x1 + share * dx, y1 + share * dy);
  }
}

/** Whether a piece of outline is the edge of the map, not a shore: along the antimeridian, or next to a pole. */
function isCut([lon1, lat1]: Position, [lon2, lat2]: Position): boolean {
  const onEdge = (lon: number) => Math.abs(Math.abs(lon) - 180) < 1e-3;
  const atPole = (lat: number) => Math.abs(lat) > 89.9;
  return (onEdge(lon1) && onEdge(lon2)) || atPole(lat1) || atPole(lat2);
}

function onPlane(point: Place, lat: number, lon: number): { x: number; y: number } {
  const east = ((((point.lon - lon + 180) % 360) + 360) % 360) - 180;
  return {
    x: east * KM_PER_DEGREE * Math.cos((((point.lat + lat) / 2) * Math.PI) / 180),
    y: (point.lat - lat) * KM_PER_DEGREE,
  };
}
