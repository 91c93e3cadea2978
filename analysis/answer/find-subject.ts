import { sayCount, sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { nearestStations } from '../place/nearest-stations.ts';
import { nightPlan, type NightPlan } from '../place/night-plan.ts';
import { POOLED_NEIGHBOURS, POOLED_WITHIN_KM, pooledMembers } from '../place/pooled-members.ts';
import { placeHistory, type PlaceHistory } from '../place/place-history.ts';
import { FEWEST_STATIONS_TO_FIT } from '../place/fit-parameters.ts';
import type { PlaceModel } from '../place/place-model.ts';
import type { Site } from '../place/site.ts';
import { stationForPlace } from '../place/station-for-place.ts';
import { FEWEST_WINTERS_OF_MEMBER } from '../place/station-network.ts';
import { InputError } from '../records/input-error.ts';
import { SUSTAINED_HOURS } from '../records/nights.ts';
import type { PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';
import { PlaceHistories, type WinterSource } from './place-histories.ts';
import type { Subject } from './subject.ts';

/** Duration whose error is told as the place's: four hours, what most thresholds ask for. */
const ERROR_DURATION = SUSTAINED_HOURS.indexOf(4);

/** What someone asks about: a station, or a point with a name of its own. */
export type PlaceRequest =
  | { readonly by: 'station'; readonly id: string }
  | {
      readonly by: 'point';
      readonly label: string;
      readonly lat: number;
      readonly lon: number;
      /** As the asker knows it; otherwise the pack's grid tells. */
      readonly elevationM: number | null;
    };

/** Who an answer is about. */
export interface FoundSubject {
  readonly subject: Subject;
  /** The station whose nights are the place's nights; `null` where they are estimated from several. */
  readonly stationId: string | null;
  /** How the nights of a place are estimated; `null` where they are a station's. */
  readonly nightPlan: NightPlan | null;
}

/**
 * The subject of an answer: a station with its own record, or a point with the winters that the stations around tell of it.
 * A point that the stations around it can't tell about is answered from the nearest station, and the notes say so.
 * @throws InputError when the station is unknown or no station is near enough
 */
export async function findSubject(
  source: WinterSource,
  request: PlaceRequest,
  histories = new PlaceHistories(source),
): Promise<FoundSubject> {
  if (request.by === 'station') return stationSubject(source, stationOf(source, request.id), [], null);
  const model = await histories.model(request);
  if (model) {
    const site = await histories.site(model, request);
    const history = placeHistory(model, site);
    if (history.winters.complete.includes(1))
      return pointSubject(source, request.label, site, model, history);
  }
  const { station, distanceKm } = stationForPlace(source.stations, request);
  const short = station.winters.complete < FEWEST_WINTERS_OF_MEMBER;
  const cause = model
    ? t`The stations around ${request.label} have too little in common with it to tell its winters`
    : t`No station with ten complete winters that had a cool night lies within reach of ${request.label}`;
  const away = kilometres(distanceKm);
  const note = short
    ? t`${cause}: these are the few winters of station ${station.name}, ${away} away, as they are.`
    : t`${cause}: these are the winters of station ${station.name}, ${away} away, as they are.`;
  return stationSubject(source, station, [note], request.label);
}

function stationOf({ stations }: WinterSource, id: string): PackStation {
  const station = stations.find((entry) => entry.id === id);
  if (station) return station;
  throw new InputError(
    t`station "${id}" is not in the pack, which has ${sayCount(stations.length)} stations`,
  );
}

async function stationSubject(
  source: WinterSource,
  station: PackStation,
  notes: readonly string[],
  standsFor: string | null,
): Promise<FoundSubject> {
  const subject = {
    place: {
      label: standsFor === null ? station.name : t`${standsFor}: station ${station.name}`,
      lat: station.lat,
      lon: station.lon,
      elevation_m: station.elevation_m,
      basis: 'station' as const,
    },
    winters: await source.winters(station),
    neighbours: await neighboursOf(source, station),
    evidence: [{ id: station.id, weight: 1, distanceKm: 0 }],
    notes,
  };
  return { subject, stationId: station.id, nightPlan: null };
}

function pointSubject(
  source: WinterSource,
  label: string,
  site: Site,
  model: PlaceModel,
  history: PlaceHistory,
): FoundSubject {
  const { errors, evidence, onStation } = history;
  const subject = {
    place: {
      label,
      lat: site.lat,
      lon: site.lon,
      elevation_m: site.elevationM,
      basis: 'history' as const,
      error_c: errors?.[ERROR_DURATION].meanErrorC ?? 0,
    },
    winters: history.winters,
    neighbours: pooledMembers(model, site, onStation).map((member) => model.network.members[member].winters),
    interpolation: errors,
    evidence,
    notes: historyNotes(source, site, history, model),
  };
  return { subject, stationId: onStation, nightPlan: nightPlan(model, site, history) };
}

async function neighboursOf(source: WinterSource, station: PackStation): Promise<WinterTable[]> {
  const others = source.stations.filter(({ id }) => id !== station.id);
  const near = nearestStations(others, station, POOLED_NEIGHBOURS, POOLED_WITHIN_KM);
  return Promise.all(near.map((neighbour) => source.winters(neighbour.station)));
}

/** Where the winters of a point come from, and what was missing. */
function historyNotes(
  source: WinterSource,
  site: Site,
  { errors, evidence, onStation }: PlaceHistory,
  { network, origin }: PlaceModel,
): string[] {
  const name = (id: string) => source.stations.find((station) => station.id === id)?.name ?? id;
  if (!errors) return [t`The point stands on station ${name(onStation ?? '')}: these are its own winters.`];
  const [first] = evidence;
  const nearest = evidence.reduce((best, station) => (station.distanceKm < best.distanceKm ? station : best));
  const count = network.members.length;
  const from = count === 1 ? t`one station` : t`${count} stations`;
  const most = t`${name(first.id)}, ${kilometres(first.distanceKm)} away`;
  const sources =
    nearest === first
      ? t`These winters are estimated from ${from}, most from ${most}.`
      : t`These winters are estimated from ${from}, most from ${most}; the nearest, ${name(nearest.id)}, stands at ${kilometres(nearest.distanceKm)}.`;
  const notes = [
    `${sources} ${t`A yard in a hollow, by water or by a wall can differ by more than the estimate's own error.`}`,
  ];
  if (count < FEWEST_STATIONS_TO_FIT)
    notes.push(t`So few stations can't show how cold varies over this land: usual figures stand in for it.`);
  if (site.elevationM === null)
    notes.push(
      t`The height of the point isn't known: estimated for ${Math.round(origin.elevationM)} m, the mean of the stations.`,
    );
  return notes;
}

function kilometres(km: number): string {
  return `${sayFigure(km, km < 10 ? 1 : 0)} km`;
}
