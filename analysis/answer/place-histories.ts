import { distanceKm } from '../place/distance.ts';
import { PlaceModel } from '../place/place-model.ts';
import { USUAL_PARAMETERS, type PlaceParameters } from '../place/place-parameters.ts';
import type { Site } from '../place/site.ts';
import { canTakePart, type Member } from '../place/station-network.ts';
import { REACH_KM, Squares, type Square } from '../place/stations-around.ts';
import { coastKmAt, elevationAt, type PlaceGrid } from '../records/grid.ts';
import type { PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';

/** Where the winters of a pack's stations come from: files for a command, tiles over HTTP for the page. */
export interface WinterSource {
  readonly stations: readonly PackStation[];
  /** How winters vary over the pack's land; `null` when the pack doesn't say. */
  readonly place: PlaceParameters | null;
  winters(station: PackStation): Promise<WinterTable>;
  /** Cells with elevation and distance to the coast; `null` when the pack has none. */
  grid(): Promise<PlaceGrid | null>;
}

/** A point as someone gives it; the height where they know it. */
export interface AskedPoint {
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
}

/** Histories of points anywhere on a pack's land. The model of a square's surroundings is made once and kept. */
export class PlaceHistories {
  readonly #squares: Squares<PackStation>;
  readonly #bySquare = new Map<string, Promise<PlaceModel | null>>();
  readonly #byStations = new Map<string, Promise<PlaceModel>>();

  constructor(private readonly source: WinterSource) {
    this.#squares = new Squares(source.stations);
  }

  /** The model that tells about a point; `null` when no station with winters enough lies within reach. */
  async model(point: { lat: number; lon: number }): Promise<PlaceModel | null> {
    const square = this.#squares.at(point);
    let model = this.#bySquare.get(square.name);
    if (!model) {
      model = this.#around(square);
      model.catch(() => this.#bySquare.delete(square.name));
      this.#bySquare.set(square.name, model);
    }
    const found = await model;
    return found?.network.members.some(({ site }) => distanceKm(site, point) <= REACH_KM) ? found : null;
  }

  /** A point with its height and its distance from the sea, as far as the pack knows them. */
  async site(model: PlaceModel, { lat, lon, elevationM }: AskedPoint): Promise<Site> {
    const grid = await this.source.grid();
    return {
      lat,
      lon,
      elevationM: elevationM ?? (grid && elevationAt(grid, lat, lon)),
      coastKm: (grid && coastKmAt(grid, lat, lon)) ?? coastOfNearest(model.network.members, { lat, lon }),
    };
  }

  /** Squares with the same stations around them share a model. */
  async #around({ stations }: Square<PackStation>): Promise<PlaceModel | null> {
    if (stations.length === 0) return null;
    const key = stations.map(({ id }) => id).join('\n');
    let model = this.#byStations.get(key);
    if (!model) {
      model = this.#build(stations);
      model.catch(() => this.#byStations.delete(key));
      this.#byStations.set(key, model);
    }
    return model;
  }

  async #build(stations: readonly PackStation[]): Promise<PlaceModel> {
    const tables = await Promise.all(stations.map((station) => this.source.winters(station)));
    const members = stations.map((station, i) => memberOf(station, tables[i]));
    const able = members.filter(({ winters }) => canTakePart(winters));
    // With none the place is free of cold as far as anyone knows: all take part, and say so by their winters.
    return new PlaceModel(able.length > 0 ? able : members, this.source.place ?? USUAL_PARAMETERS);
  }
}

/** A pack's station as a member of a network. */
export function memberOf(station: PackStation, winters: WinterTable): Member {
  const { id, lat, lon, elevation_m: elevationM, coast_km: coastKm } = station;
  return { id, site: { lat, lon, elevationM, coastKm }, winters };
}

/** Without a grid: distance to the coast as the three nearest stations have it, by inverse distance. */
function coastOfNearest(members: readonly Member[], point: { lat: number; lon: number }): number | null {
  const near = members
    .flatMap(({ site }) =>
      site.coastKm === null ? [] : [{ coast: site.coastKm, km: distanceKm(site, point) }],
    )
    .sort((a, b) => a.km - b.km)
    .slice(0, 3);
  if (near.length === 0) return null;
  const weight = (km: number) => 1 / (km + 1);
  return (
    near.reduce((sum, { coast, km }) => sum + coast * weight(km), 0) /
    near.reduce((sum, { km }) => sum + weight(km), 0)
  );
}
