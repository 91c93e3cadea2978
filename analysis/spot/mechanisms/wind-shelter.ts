import { sidesOfLine, sidesOfOutline } from '../segments.ts';
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
/** The cold wind veers by up to 30 degrees: its bearing and six on either side, so that shelter ends softly. */
const VEER_DEG = Array.from({ length: 13 }, (_, k) => 5 * (k - 6));

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
    const sides = thing.kind === 'building' ? sidesOfOutline(thing.outline) : sidesOfLine(thing.line);
    return strength > 0
      ? sides.map((side) => ({ kind: thing.kind, side, heightM: thing.heightM, strength }))
      : [];
  });
  return barrierRays(
    barriers,
    VEER_DEG.map((veer) => coldWindFromDeg + veer),
  );
}

/** Share of the full shelter at a point, 0-1: the mean over the wind's bearings, of each the best barrier. */
export function shelterShare(wind: BarrierRays, eastM: number, northM: number): number {
  let sum = 0;
  for (let ray = 0; ray < wind.rays; ray++) {
    let best = 0;
    lookAlong(wind, ray, eastM, northM);
    for (let barrier = 0; barrier < wind.barriers; barrier++) {
      const distanceM = wind.distanceM[barrier];
      if (distanceM < 0 || wind.strength[barrier] <= best) continue;
      const heights = distanceM / wind.heightM[barrier];
      const kept = Math.min(1, Math.max(0, (LOST_HEIGHTS - heights) / (LOST_HEIGHTS - FULL_HEIGHTS)));
      if (kept * wind.strength[barrier] > best) best = kept * wind.strength[barrier];
    }
    sum += best;
  }
  return sum / wind.rays;
}
