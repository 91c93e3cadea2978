import { MECHANISM_IDS, type MechanismId } from './mechanism.ts';
import { areaShare } from './mechanisms/areas.ts';
import { coldAirShare } from './mechanisms/cold-air.ts';
import { wallShares } from './mechanisms/wall-warmth.ts';
import { shelterShare } from './mechanisms/wind-shelter.ts';
import { AZIMUTHS } from './obstacles.ts';
import type { PreparedYard } from './prepare-yard.ts';
import { skyHiddenAt } from './sky-view.ts';

/** Height of a young tree's middle, for which the offsets hold, m. */
export const TREE_HEIGHT_M = 1;
/** A closed evergreen crown lets about a quarter of the sky through, so the canopy's row holds from here on (inferred). */
const FULL_HIDDEN = 0.75;

/** Where each mechanism's share lies in the arrays below. */
export const SLOT = Object.fromEntries(MECHANISM_IDS.map((id, at) => [id, at])) as Readonly<
  Record<MechanismId, number>
>;

/** Shares of full effect at one point, by mechanism (`SLOT`); below 0 for cold air on high ground, else 0-1. */
export interface SpotShares {
  readonly calm: Float64Array;
  readonly windy: Float64Array;
  /**
   * Crowns and roofs beyond all that stands upright: their part of the share of `sky-hidden`, the sky that they hide,
   * and the sky that all together hide.
   */
  readonly overhead: Float64Array;
}

export function newShares(): SpotShares {
  return {
    calm: new Float64Array(MECHANISM_IDS.length),
    windy: new Float64Array(MECHANISM_IDS.length),
    overhead: new Float64Array(3),
  };
}

/** Writes the shares at a point, metres of the plan, into `yard.shares`. */
export function findShares(yard: PreparedYard, eastM: number, northM: number): SpotShares {
  const { calm, windy, overhead } = yard.shares;
  const { paving, bare, covered, ponds } = yard.areas;
  wallShares(yard.faces, eastM, northM, yard.walls);
  calm[SLOT['warm-wall']] = yard.walls[0];
  calm[SLOT['heated-wall']] = yard.walls[1];
  calm[SLOT['wind-shelter']] = shelterShare(yard.wind, eastM, northM);

  const hidden = skyHiddenAt(yard.obstacles, eastM, northM, TREE_HEIGHT_M);
  const upright = hidden === 1 ? 1 : hiddenByUpright(yard);
  calm[SLOT['sky-hidden']] = Math.min(1, hidden / FULL_HIDDEN);
  overhead[0] = calm[SLOT['sky-hidden']] - Math.min(1, upright / FULL_HIDDEN);
  overhead[1] = hidden - upright;
  overhead[2] = hidden;

  calm[SLOT.paving] = areaShare(paving, eastM, northM);
  calm[SLOT['bare-ground']] = areaShare(bare, eastM, northM);
  calm[SLOT['mulch-or-tall-grass']] = areaShare(covered, eastM, northM);
  calm[SLOT.pond] = areaShare(ponds, eastM, northM);
  calm[SLOT['cold-air']] = coldAirShare(yard.air, eastM, northM);
  windy.set(calm);
  calm[SLOT['big-water']] = yard.bigWater.calm;
  windy[SLOT['big-water']] = yard.bigWater.windy;
  calm[SLOT.slope] = yard.slope.calm;
  windy[SLOT.slope] = yard.slope.windy;
  return yard.shares;
}

/** Share of the sky hidden by walls, buildings and windbreaks alone, of the point looked from last. */
function hiddenByUpright({ obstacles }: PreparedYard): number {
  let sum = 0;
  for (let azimuth = 0; azimuth < AZIMUTHS; azimuth++) sum += obstacles.outlook.solid[azimuth];
  return sum / AZIMUTHS;
}
