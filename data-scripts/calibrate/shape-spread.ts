import { neighbourSkewness } from '../../analysis/answer/pooled-neighbours.ts';
import { gevShapeFromLSkewness } from '../../analysis/extremes/gev-l-moments.ts';
import {
  averageOf,
  criticalDiscordancy,
  discordancy,
  testRegion,
  type RegionSite,
} from '../../analysis/extremes/regional-homogeneity.ts';
import { nearestStations } from '../../analysis/place/nearest-stations.ts';
import { POOLED_NEIGHBOURS, POOLED_WITHIN_KM } from '../../analysis/place/pooled-members.ts';
import { NO_GAINS } from '../../analysis/winter/winter-minima.ts';
import type { Pack } from '../pack/open-pack.ts';

/** How far the shapes of neighbours differ in a pack, from groups of a station and its neighbours. */
export interface ShapeSpread {
  readonly groups: number;
  /** Mean heterogeneity of L-skewness, in standard deviations of a homogeneous group's. */
  readonly h: number;
  /** Standard deviation of Hosking's k between neighbours beyond what sampling makes; 0 where there is less. */
  readonly spread: number;
  /** Share of stations discordant in their group. */
  readonly discordant: number;
}

const FEWEST_WINTERS = 20;
const FEWEST_IN_GROUP = 5;
const EVERY = 3;
const SIMULATIONS = 100;

/** Every third station with its neighbours, by Hosking and Wallis's simulation with the winters' correlation; null without a group. */
export async function shapeSpread(pack: Pack, hours: number): Promise<ShapeSpread | null> {
  const sites = new Map<string, RegionSite>();
  for (const station of pack.stations) {
    const found = neighbourSkewness(await pack.winters(station), hours, NO_GAINS);
    if (!found || found.winters < FEWEST_WINTERS) continue;
    const { winters, skewness } = found;
    sites.set(station.id, { values: winters, spread: found.scale!, skewness, kurtosis: found.kurtosis! });
  }
  const stations = pack.stations.filter(({ id }) => sites.has(id));
  const { share, rangeKm } = pack.place?.anomaly ?? { share: 0, rangeKm: 1 };
  let [groups, h, variance, discordant, members] = [0, 0, 0, 0, 0];
  for (let i = 0; i < stations.length; i += EVERY) {
    const near = nearestStations(stations, stations[i], 1 + POOLED_NEIGHBOURS, POOLED_WITHIN_KM);
    if (near.length < FEWEST_IN_GROUP) continue;
    const group = near.map(({ station }) => sites.get(station.id)!);
    const critical = criticalDiscordancy(group.length);
    discordant += discordancy(group).filter((d) => d > critical).length;
    members += group.length;
    const apartKm = near.reduce((sum, { distanceKm }) => sum + distanceKm, 0) / near.length;
    const correlation = share * Math.exp(-apartKm / rangeKm);
    const options = { seed: 1 + i, simulations: SIMULATIONS, shiftedStations: true, correlation };
    const { skewness } = testRegion(group, options);
    const beyond = skewness.observed ** 2 - skewness.simulatedMean ** 2 - skewness.simulatedDeviation ** 2;
    const middle = averageOf(group).skewness;
    const slope = (gevShapeFromLSkewness(middle + 0.02) - gevShapeFromLSkewness(middle - 0.02)) / 0.04;
    groups++;
    h += skewness.h;
    variance += beyond * slope ** 2;
  }
  if (groups === 0) return null;
  return {
    groups,
    h: h / groups,
    spread: Math.sqrt(Math.max(0, variance / groups)),
    discordant: discordant / members,
  };
}
