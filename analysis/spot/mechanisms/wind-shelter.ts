import type { Yard } from '../yard.ts';
import { barrierRays, lookAlong, type Barrier, type BarrierRays } from './upright-rays.ts';

/** Downwind of a barrier the shelter is strongest to about 5 heights and lost by about 20 (from memory, windbreak studies). */
const FULL_HEIGHTS = 5;
const LOST_HEIGHTS = 20;
/** What isn't higher than this shelters no tree; from the second height on the shelter is full (a design choice). */
const LOWEST_M = 0.5;
const FULL_HEIGHT_M = 2;
/** Pickets let about half of the wind through (inferred). */
const OPEN_STRENGTH = 0.5;
/** The cold wind veers by up to 30 degrees to either side. */
const VEER_DEG = 30;
const STEP_DEG = 5;

/** What shelters from the cold wind, looked for into the wind. */
export function windBarriers({
  things,
  coldWindFromDeg,
}: Pick<Yard, 'things' | 'coldWindFromDeg'>): BarrierRays {
  const barriers = things.flatMap((thing): Barrier[] => {
    if (thing.kind !== 'building' && thing.kind !== 'wall' && thing.kind !== 'windbreak') return [];
    const strength =
      Math.min(1, Math.max(0, (thing.heightM - LOWEST_M) / (FULL_HEIGHT_M - LOWEST_M))) *
      (thing.kind === 'wall' && thing.open ? OPEN_STRENGTH : 1);
    return strength > 0 ? [{ thing, heightM: thing.heightM, strength }] : [];
  });
  return barrierRays(barriers, coldWindFromDeg, VEER_DEG, STEP_DEG);
}

/**
 * Share of the full shelter at a point, 0-1: the mean over the wind's bearings; of each the sum over the sides that
 * fill its sector, and no more than the best of them.
 */
export function shelterShare(wind: BarrierRays, eastM: number, northM: number): number {
  const { rays, sides, distanceM, filled, heightM, strength } = wind;
  let sum = 0;
  for (let ray = 0; ray < rays; ray++) {
    lookAlong(wind, ray, eastM, northM);
    let best = 0;
    let all = 0;
    for (let side = 0; side < sides; side++) {
      if (filled[side] === 0) continue;
      const left = (LOST_HEIGHTS - distanceM[side] / heightM[side]) / (LOST_HEIGHTS - FULL_HEIGHTS);
      const share = strength[side] * Math.min(1, Math.max(0, left));
      if (share > best) best = share;
      all += share * filled[side];
    }
    sum += Math.min(best, all);
  }
  return sum / rays;
}
