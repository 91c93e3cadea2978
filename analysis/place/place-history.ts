import { t } from '../language/t.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_COUNT } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { WinterWeights } from './anomaly-weights.ts';
import { distanceKm } from './distance.ts';
import { dropWarmKinds, levelsByKind } from './kinds-of-night.ts';
import type { PlaceClimate, PlaceError, PlaceModel } from './place-model.ts';
import type { Site } from './site.ts';
import type { Member } from './station-network.ts';

/** A station a place's winters come from. */
export interface Evidence {
  readonly id: string;
  /** Its part of all weight in the winters, 0-1. */
  readonly weight: number;
  readonly distanceKm: number;
}

/** The winters of a point, estimated from stations around it. */
export interface PlaceHistory {
  /** In the shape of a station's winters: gain-free, by kind of night. */
  readonly winters: WinterTable;
  /** By index of SUSTAINED_HOURS; `null` on a station. */
  readonly errors: readonly PlaceError[] | null;
  /** Heaviest first. */
  readonly evidence: readonly Evidence[];
  /** Id of the station the point stands on, `null` between stations. */
  readonly onStation: string | null;
}

/** A point this near to a station, and at its height, stands on it and gets the station's own record. */
export const ON_STATION_KM = 0.1;
const ON_STATION_M = 10;
/** Reason of a winter that is left out at a point. */
const NOT_TOLD = t`no station near enough has this winter complete`;

/** The winters of a site by a model of the stations around it. */
export function placeHistory(model: PlaceModel, site: Site): PlaceHistory {
  const on = stationAt(model.network.members, site);
  if (on) {
    return {
      winters: on.winters,
      errors: null,
      evidence: [{ id: on.id, weight: 1, distanceKm: distanceKm(on.site, site) }],
      onStation: on.id,
    };
  }
  const separationsKm = model.separations(site);
  const weights = model.weights(separationsKm);
  const { coldest, climates } = coldestByKind(model, site, separationsKm, weights, SUSTAINED_COUNT - 1);
  return {
    winters: {
      winter: model.network.labels,
      complete: Uint8Array.from(weights, (entry) => (entry ? 1 : 0)),
      reason: weights.map((entry) => (entry ? '' : NOT_TOLD)),
      coldest,
      coldestDay: coldestDays(model, weights, coldest),
    },
    errors: climates.map((climate, j) => model.errorAt(site, separationsKm, j, climate, weights)),
    evidence: evidenceOf(model, site, weights),
    onStation: null,
  };
}

/**
 * Coldest sustained cold of each winter at a site, by kind of night and duration.
 * @param last index of the longest duration wanted; shorter ones come with it, since they bound it
 * @returns `coldest[kind][j][w]`, hundredths of °C, and mean and scale for each duration
 */
export function coldestByKind(
  model: PlaceModel,
  site: Site,
  separationsKm: ArrayLike<number>,
  weights: readonly (WinterWeights | null)[],
  last: number,
): { coldest: Int16Array[][]; climates: PlaceClimate[] } {
  const climates: PlaceClimate[] = [];
  const byHours: Int16Array[][] = [];
  let shorter = new Float64Array(weights.length).fill(-Infinity);
  for (let j = 0; j <= last; j++) {
    const climate = model.climateAt(site, separationsKm, j);
    climates.push(climate);
    // Longer cold is never colder than shorter cold.
    const levels = model.levelsC(j, climate, weights).map((level, w) => Math.max(level, shorter[w]));
    byHours.push(levelsByKind(model.network, j, levels, weights, byHours[j - 1] ?? null));
    shorter = levels;
  }
  const coldest = NIGHT_KINDS.map((_, kind) => byHours.map((kinds) => kinds[kind]));
  dropWarmKinds(coldest);
  return { coldest, climates };
}

/** The member a site stands on; of several there the one with most complete winters. */
export function stationAt(members: readonly Member[], site: Site): Member | null {
  const there = members.filter(
    (member) =>
      distanceKm(member.site, site) <= ON_STATION_KM &&
      (site.elevationM === null ||
        member.site.elevationM === null ||
        Math.abs(site.elevationM - member.site.elevationM) <= ON_STATION_M),
  );
  const complete = (member: Member) => member.winters.complete.reduce((sum, whole) => sum + whole, 0);
  return there.reduce<Member | null>(
    (best, member) => (best && complete(best) >= complete(member) ? best : member),
    null,
  );
}

/** Nights are dated as at the station that weighs most among those that had such a night. */
function coldestDays(
  { network }: PlaceModel,
  weights: readonly (WinterWeights | null)[],
  coldest: readonly (readonly Int16Array[])[],
): Int32Array[][] {
  return coldest.map((byHours, kind) =>
    byHours.map((levels, j) =>
      Int32Array.from(levels, (level, w) => {
        const entry = weights[w];
        if (!entry || level === MISSING_HUNDREDTHS) return 0;
        let day = 0;
        let heaviest = -Infinity;
        entry.members.forEach((member, a) => {
          const own = network.members[member].winters;
          const row = network.row(member, w);
          if (own.coldest[kind][j][row] === MISSING_HUNDREDTHS || entry.weights[a] <= heaviest) return;
          heaviest = entry.weights[a];
          day = own.coldestDay[kind][j][row];
        });
        return day;
      }),
    ),
  );
}

function evidenceOf(
  { network: { members } }: PlaceModel,
  site: Site,
  weights: readonly (WinterWeights | null)[],
): Evidence[] {
  const sums = new Float64Array(members.length);
  for (const entry of weights)
    entry?.members.forEach((member, a) => {
      sums[member] += Math.max(0, entry.weights[a]);
    });
  const all = sums.reduce((sum, weight) => sum + weight, 0);
  return members
    .map(({ id, site: at }, i) => ({ id, weight: sums[i] / all, distanceKm: distanceKm(at, site) }))
    .filter(({ weight }) => weight > 0.005)
    .sort((a, b) => b.weight - a.weight);
}
