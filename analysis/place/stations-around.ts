import type { PackStation } from '../records/pack.ts';
import { distanceKm } from './distance.ts';
import { FEWEST_WINTERS_OF_MEMBER } from './station-network.ts';

/** A point is told of when a station that takes part lies this near, km. */
export const REACH_KM = 100;
/** Stations this near to a point's square take part, km. */
const AROUND_KM = 240;
/** At most so many, the nearest to the square. */
const MOST_STATIONS = 80;
/** So many stations nearest to a point always take part in what is told of it. */
const SURELY_NEAREST = 8;
/** Side of the largest squares, degrees, and how often they may be quartered. */
const SIDE_DEGREES = 2;
const MOST_QUARTERINGS = 5;
/** Of latitude, less than any. */
const KM_PER_DEGREE = 110;

/** An area whose points share one model. */
export interface Square<S> {
  readonly name: string;
  /** The stations that tell about its points, in the order of their ids. */
  readonly stations: readonly S[];
}

/**
 * Divides the globe into squares, all points of which are told about by the same stations: those around the square's
 * middle. In a dense network squares are quartered until the nearest stations of every point in them are among these.
 * Stations across the equator have their winters in other months and take no part.
 */
export class Squares<S extends PackStation> {
  readonly #able: readonly S[];
  readonly #known = new Map<string, Square<S> | 'quartered'>();

  constructor(stations: readonly S[]) {
    this.#able = stations.filter(({ winters }) => winters.complete >= FEWEST_WINTERS_OF_MEMBER);
  }

  at({ lat, lon }: Point): Square<S> {
    const east = (((lon + 180) % 360) + 360) % 360;
    for (let quarterings = 0; ; quarterings++) {
      const side = SIDE_DEGREES / 2 ** quarterings;
      const [row, column] = [Math.floor(lat / side), Math.floor(east / side)];
      const name = `${quarterings}:${row}:${column}`;
      let square = this.#known.get(name);
      if (!square) {
        square = this.#around(name, row * side, column * side - 180, side, quarterings < MOST_QUARTERINGS);
        this.#known.set(name, square);
      }
      if (square !== 'quartered') return square;
    }
  }

  #around(
    name: string,
    south: number,
    west: number,
    side: number,
    divisible: boolean,
  ): Square<S> | 'quartered' {
    const middle = { lat: south + side / 2, lon: west + side / 2 };
    const farthestLat = side / 2 + AROUND_KM / KM_PER_DEGREE;
    const near = this.#able
      .filter(({ lat }) => lat < 0 === middle.lat < 0 && Math.abs(lat - middle.lat) <= farthestLat)
      .map((station) => ({ station, km: kmFromSquare(station, middle, side / 2) }))
      .filter(({ km }) => km <= AROUND_KM)
      .sort((a, b) => a.km - b.km || (a.station.id < b.station.id ? -1 : 1));
    if (near.length > MOST_STATIONS && divisible) {
      const fromMiddle = near.map(({ station }) => distanceKm(station, middle)).sort((a, b) => a - b);
      // The n nearest to any point of the square lie within this of it.
      const nearestKm = fromMiddle[SURELY_NEAREST - 1] + halfDiagonalKm(middle, side / 2);
      if (nearestKm >= near[MOST_STATIONS].km) return 'quartered';
    }
    const stations = near
      .slice(0, MOST_STATIONS)
      .map(({ station }) => station)
      .sort((a, b) => (a.id < b.id ? -1 : 1));
    return { name, stations };
  }
}

/** The stations that tell about a point, see {@link Squares}. */
export function stationsAround<S extends PackStation>(stations: readonly S[], point: Point): readonly S[] {
  return new Squares(stations).at(point).stations;
}

type Point = { readonly lat: number; readonly lon: number };

/** Distance to the nearest point of a square, 0 within it. */
function kmFromSquare(station: Point, middle: Point, half: number): number {
  const clamp = (by: number) => Math.max(-half, Math.min(half, by));
  const east = ((((station.lon - middle.lon + 180) % 360) + 360) % 360) - 180;
  return distanceKm(station, {
    lat: middle.lat + clamp(station.lat - middle.lat),
    lon: middle.lon + clamp(east),
  });
}

/** From the middle of a square to its farthest corner. */
function halfDiagonalKm(middle: Point, half: number): number {
  return Math.max(
    ...[-half, half].map((north) => distanceKm(middle, { lat: middle.lat + north, lon: middle.lon + half })),
  );
}
