import type { InterpolationError } from '../extremes/interpolation-error.ts';
import { fitWinters } from '../extremes/fit-winters.ts';
import type { WinterFit } from '../extremes/fitted-winters.ts';
import type { SeededRandom } from '../math/seeded-random.ts';
import { distanceKm } from '../place/distance.ts';
import { coldestByKind, stationAt } from '../place/place-history.ts';
import { PlaceModel } from '../place/place-model.ts';
import type { PlaceParameters } from '../place/place-parameters.ts';
import { pooledMembers, POOLED_NEIGHBOURS, POOLED_WITHIN_KM } from '../place/pooled-members.ts';
import { nearestStations } from '../place/nearest-stations.ts';
import { canTakePart, type Member } from '../place/station-network.ts';
import { REACH_KM, stationsAround } from '../place/stations-around.ts';
import { durationWeights } from '../records/nights.ts';
import type { PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';
import { NO_GAINS, winterMinima } from '../winter/winter-minima.ts';
import { interpolationOf } from './fit-book.ts';
import { memberOf } from './place-histories.ts';
import { neighbourSkewness } from './pooled-neighbours.ts';
import { completeValuesC } from './winter-values.ts';

/** A station with its winters. */
export interface StationWinters {
  readonly station: PackStation;
  readonly winters: WinterTable;
}

/** What is known of a station left out, for one duration: by its own record and by the stations kept. */
export interface LeftOutStation {
  readonly id: string;
  /** Fit of the station's own record. */
  readonly own: WinterFit;
  /** Values of the station's complete winters, °C, NaN without a cold night. */
  readonly valuesC: Float64Array;
  /** Fit of all winters that the others tell of. */
  readonly whole: WinterFit;
  /** Fit of the winters told that the station's record has too; its interpolation error is that of these winters. */
  readonly same: WinterFit;
  /** Stations kept with a fit of their own, nearest first: what the baselines are made from. */
  readonly kept: readonly { readonly km: number; readonly aboveM: number; readonly own: WinterFit }[];
}

export interface LeaveOutOptions {
  /** Durations judged, each one of SUSTAINED_HOURS. */
  readonly hours: readonly number[];
  /** Parts the stations are dealt into; each part in turn is left out as a whole. */
  readonly parts: number;
  /** At most so many stations are judged. */
  readonly most: number;
  /** Deals the stations out. */
  readonly random: SeededRandom;
  /** How winters vary over the land: the pack's, or fitted anew to the stations kept. */
  readonly parameters: PlaceParameters | ((kept: readonly Member[]) => PlaceParameters);
  /** Draws of each range. */
  readonly draws?: number;
}

/** Fewest complete winters by which a station left out is judged: enough for a fit of its own. */
export const FEWEST_WINTERS_TO_JUDGE = 20;
const NEIGHBOURS_OF_BASELINE = 8;
const SEED = 1895;

/**
 * Leaves stations out and estimates their winters from those kept, as a point's are estimated. A station is judged that
 * has 20 complete winters and one kept within reach; one that stands on a station kept isn't.
 * @returns stations judged, by duration in the order asked for
 */
export function leaveOut(all: readonly StationWinters[], options: LeaveOutOptions): LeftOutStation[][] {
  const { hours, parts, most, random, parameters, draws = 200 } = options;
  const able = all.filter(({ winters }) => canTakePart(winters));
  const dealt = able
    .map((entry) => ({ entry, at: random.uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ entry }) => entry);
  const ownFits = hours.map(() => new Map<string, WinterFit | null>());
  const ownFit = (d: number, { station, winters }: StationWinters): WinterFit | null => {
    const known = ownFits[d].get(station.id);
    if (known !== undefined) return known;
    const others = able.filter((entry) => entry.station.id !== station.id);
    const fit = fitOf(winters, hours[d], neighboursOf(others, station), null, draws);
    ownFits[d].set(station.id, fit);
    return fit;
  };
  const judged = hours.map((): LeftOutStation[] => []);
  for (let part = 0; part < parts && judged[0].length < most; part++) {
    const kept = dealt.filter((_, i) => i % parts !== part);
    const keptParameters = typeof parameters === 'function' ? parameters(membersOf(kept)) : parameters;
    const models = new Map<string, PlaceModel>();
    for (let i = part; i < dealt.length && judged[0].length < most; i += parts) {
      const { station, winters } = dealt[i];
      if (station.winters.complete < FEWEST_WINTERS_TO_JUDGE) continue;
      const model = modelAround(kept, station, keptParameters, models);
      if (!model) continue;
      const near = baselineStations(kept, station);
      const found = hours.map((h, d) => {
        const own = ownFit(d, dealt[i]);
        const told = own && estimate(model, memberOf(station, winters), h, draws);
        const fits = near.flatMap((entry) => {
          const fit = ownFit(d, entry);
          return fit
            ? [
                {
                  km: distanceKm(entry.station, station),
                  aboveM: (entry.station.elevation_m ?? 0) - (station.elevation_m ?? 0),
                  own: fit,
                },
              ]
            : [];
        });
        return own && told && fits.length > 0
          ? { id: station.id, own, valuesC: valuesOf(winters, h), kept: fits, ...told }
          : null;
      });
      if (found.every((entry) => entry !== null)) found.forEach((entry, d) => judged[d].push(entry));
    }
  }
  return judged;
}

function membersOf(entries: readonly StationWinters[]): Member[] {
  return entries.map(({ station, winters }) => memberOf(station, winters));
}

/** The model that tells of a station's place when it isn't there; null out of reach. */
function modelAround(
  kept: readonly StationWinters[],
  place: PackStation,
  parameters: PlaceParameters,
  known: Map<string, PlaceModel>,
): PlaceModel | null {
  const around = new Set(
    stationsAround(
      kept.map(({ station }) => station),
      place,
    ).map(({ id }) => id),
  );
  const entries = kept.filter(({ station }) => around.has(station.id) && station.id !== place.id);
  if (!entries.some(({ station }) => distanceKm(station, place) <= REACH_KM)) return null;
  const members = membersOf(entries).sort((a, b) => (a.id < b.id ? -1 : 1));
  const key = members.map(({ id }) => id).join('\n');
  let model = known.get(key);
  if (!model) known.set(key, (model = new PlaceModel(members, parameters)));
  return model;
}

/** The winters of a member's site by a model it isn't in: all of them, and those its own record has complete. */
function estimate(
  model: PlaceModel,
  { site, winters: own }: Member,
  hours: number,
  draws: number,
): { whole: WinterFit; same: WinterFit } | null {
  if (stationAt(model.network.members, site)) return null;
  const separationsKm = model.separations(site);
  const weights = model.weights(separationsKm);
  if (!weights.some((entry) => entry !== null)) return null;
  const lower = durationWeights(hours).lower;
  const { coldest, climates } = coldestByKind(model, site, separationsKm, weights, lower);
  const neighbours = pooledMembers(model, site, null).map((member) => model.network.members[member].winters);
  const { labels } = model.network;
  const table = (counts: (w: number) => boolean): WinterTable => ({
    winter: labels,
    complete: Uint8Array.from(weights, (entry, w) => (entry && counts(w) ? 1 : 0)),
    reason: [],
    coldest,
    coldestDay: [],
  });
  const seen = new Set([...own.winter].filter((_, w) => own.complete[w]));
  const whole = fitOf(
    table(() => true),
    hours,
    neighbours,
    model.errorAt(site, separationsKm, lower, climates[lower], weights),
    draws,
  );
  const shared = weights.map((entry, w) => (seen.has(labels[w]) ? entry : null));
  if (!shared.some((entry) => entry !== null)) return null;
  const sharedError = model.errorAt(site, separationsKm, lower, climates[lower], shared);
  const same = fitOf(
    table((w) => seen.has(labels[w])),
    hours,
    neighbours,
    sharedError,
    draws,
  );
  return whole && same && { whole, same };
}

function fitOf(
  winters: WinterTable,
  hours: number,
  neighbours: readonly WinterTable[],
  error: InterpolationError | null,
  draws: number,
): WinterFit | null {
  const valuesC = valuesOf(winters, hours);
  return fitWinters({
    valuesC,
    neighbours: neighbours.flatMap((table) => neighbourSkewness(table, hours, NO_GAINS) ?? []),
    interpolation: interpolationOf(error, valuesC),
    seed: SEED,
    draws,
  });
}

function valuesOf(winters: WinterTable, hours: number): Float64Array {
  return completeValuesC(winters, winterMinima(winters, hours, NO_GAINS));
}

function neighboursOf(others: readonly StationWinters[], place: PackStation): WinterTable[] {
  return nearby(others, place, POOLED_NEIGHBOURS, POOLED_WITHIN_KM).map(({ winters }) => winters);
}

/** The nearest stations kept with winters enough for a fit. */
function baselineStations(kept: readonly StationWinters[], place: PackStation): StationWinters[] {
  const fit = kept.filter(
    ({ station }) => station.id !== place.id && station.winters.complete >= FEWEST_WINTERS_TO_JUDGE,
  );
  return nearby(fit, place, NEIGHBOURS_OF_BASELINE, Infinity);
}

function nearby(
  entries: readonly StationWinters[],
  place: PackStation,
  most: number,
  withinKm: number,
): StationWinters[] {
  const byId = new Map(entries.map((entry) => [entry.station.id, entry]));
  const stations = entries.map(({ station }) => station);
  return nearestStations(stations, place, most, withinKm).map(({ station }) => byId.get(station.id)!);
}
