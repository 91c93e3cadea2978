import { distanceKm } from '../place/distance.ts';
import { placeHistory, type PlaceHistory } from '../place/place-history.ts';
import { PlaceModel } from '../place/place-model.ts';
import { USUAL_PARAMETERS, type PlaceParameters } from '../place/place-parameters.ts';
import type { Site } from '../place/site.ts';
import { canTakePart, type Member } from '../place/station-network.ts';
import { REACH_KM, stationsAround } from '../place/stations-around.ts';
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

/** Histories of points anywhere on a pack's land. Models of the stations around are made once and kept. */
export class PlaceHistories {
  readonly #models = new Map<string, Promise<PlaceModel>>();

  constructor(private readonly source: WinterSource) {}

  /** A point with its height and its distance from the sea, as far as the pack knows them. */
  async site(point: { lat: number; lon: number; elevationM: number | null }): Promise<Site> {
    const { lat, lon } = point;
    const grid = await this.source.grid();
    return {
      lat,
      lon,
      elevationM: point.elevationM ?? (grid && elevationAt(grid, lat, lon)),
      coastKm: (grid && coastKmAt(grid, lat, lon)) ?? coastOfNearest(this.source.stations, point),
    };
  }

  /** The model that tells about a point; `null` when no station with winters enough lies within reach. */
  async model(point: { lat: number; lon: number }): Promise<PlaceModel | null> {
    const around = stationsAround(this.source.stations, point);
    if (!around.some((station) => distanceKm(station, point) <= REACH_KM)) return null;
    const key = around.map(({ id }) => id).join('\n');
    let model = this.#models.get(key);
    if (!model) {
      model = this.#build(around);
      model.catch(() => this.#models.delete(key));
      this.#models.set(key, model);
    }
    const found = await model;
    return found.network.members.some(({ site }) => distanceKm(site, point) <= REACH_KM) ? found : null;
  }

  /** The winters of a site; `null` as for {@link model}. */
  async at(site: Site): Promise<{ history: PlaceHistory; model: PlaceModel } | null> {
    const model = await this.model(site);
    return model && { history: placeHistory(model, site), model };
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
function coastOfNearest(
  stations: readonly PackStation[],
  point: { lat: number; lon: number },
): number | null {
  const near = stations
    .flatMap((station) =>
      station.coast_km === null ? [] : [{ coast: station.coast_km, km: distanceKm(station, point) }],
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
