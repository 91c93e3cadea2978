import { SUSTAINED_COUNT } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { hemisphereOf, type Hemisphere } from '../winter/winter-year.ts';
import type { WinterWeights } from './anomaly-weights.ts';
import type { PlaceHistory } from './place-history.ts';
import type { PlaceModel } from './place-model.ts';
import type { Site } from './site.ts';

/** One winter's part of a plan. */
export interface WinterSources {
  /** Index into the stations of the plan, heaviest first. */
  readonly stations: readonly number[];
  /** Their parts, adding up to 1. */
  readonly parts: readonly number[];
}

/**
 * How a point's nights come from those of stations: plain data, so that it can be made where the winters are (a worker) and
 * carried out where the database is.
 */
export interface NightPlan {
  /** Ids of the stations whose nights are needed. */
  readonly stationIds: readonly string[];
  /** `stationMeansC[station][j]`: mean of the station's winter values for SUSTAINED_HOURS[j], °C. */
  readonly stationMeansC: readonly Float64Array[];
  /** The same at the point, by duration. */
  readonly meansC: Float64Array;
  readonly hemisphere: Hemisphere;
  /** The point's winters, whose levels the nights must meet. */
  readonly winters: WinterTable;
  /** By winter of the table; `null` where the winter isn't told. */
  readonly sources: readonly (WinterSources | null)[];
}

/** Stations whose nights are read for a point, unless a winter would be left without: each is about 0.7 MB of ranges. */
const SOURCES = 6;

/** The plan for a site between stations; `null` on a station, whose nights are its own. */
export function nightPlan(model: PlaceModel, site: Site, history: PlaceHistory): NightPlan | null {
  const { errors, winters } = history;
  if (!errors) return null;
  const heaviest = model.weights(model.separations(site)).map((entry) => entry && heaviestOf(entry));
  const used = usedMembers(heaviest, model.network.members.length);
  const index = new Map(used.map((member, at) => [member, at]));
  return {
    stationIds: used.map((member) => model.network.members[member].id),
    stationMeansC: used.map((member) =>
      Float64Array.from({ length: SUSTAINED_COUNT }, (_, j) => model.climates(j).meanC[member]),
    ),
    meansC: Float64Array.from(errors, ({ meanC }) => meanC),
    hemisphere: hemisphereOf(site.lat),
    winters,
    sources: heaviest.map((entry) => {
      const kept = entry?.filter(({ member }) => index.has(member)) ?? [];
      if (kept.length === 0) return null;
      const sum = kept.reduce((total, { weight }) => total + weight, 0);
      return {
        stations: kept.map(({ member }) => index.get(member)!),
        parts: kept.map(({ weight }) => weight / sum),
      };
    }),
  };
}

interface Weighted {
  readonly member: number;
  readonly weight: number;
}

/** A station that a winter's estimate leans on with a negative weight has no night to give; one is always left. */
function heaviestOf({ members, weights }: WinterWeights): Weighted[] {
  return members
    .map((member, a) => ({ member, weight: weights[a] }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight || a.member - b.member)
    .slice(0, SOURCES);
}

/** Members with most weight over all winters; and for a winter that has none of them its heaviest. */
function usedMembers(heaviest: readonly (Weighted[] | null)[], count: number): number[] {
  const sums = new Float64Array(count);
  for (const entry of heaviest) for (const { member, weight } of entry ?? []) sums[member] += weight;
  const used = new Set(
    Array.from(sums, (_, member) => member)
      .filter((member) => sums[member] > 0)
      .sort((a, b) => sums[b] - sums[a] || a - b)
      .slice(0, SOURCES),
  );
  for (const entry of heaviest) {
    if (entry && entry.length > 0 && !entry.some(({ member }) => used.has(member))) used.add(entry[0].member);
  }
  return [...used].sort((a, b) => a - b);
}
