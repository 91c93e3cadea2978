import { relativeHeightM } from '../relief.ts';
import type { Yard } from '../yard.ts';
import { barrierRays, lookAlong, type Barrier, type BarrierRays } from './upright-rays.ts';

/** Depth at which a low spot has its full effect, m: -5.5 °F at 0.6 °F for each metre, the middles of both rows. */
const FULL_DEPTH_M = 9.2;
/** Heights gain no more than the crest of a hill does: 2.5 of 5.5 °F. */
const LEAST_SHARE = -2.5 / 5.5;
/** Cold air that drains down a slope is shallow: a dam holds no more of it (from memory; inferred for yards). */
const DAM_MAX_M = 3;
/** Behind a dam the pool thins out over this many heights (a design choice). */
const POOL_HEIGHTS = 10;
/** From this fall on air drains as strongly as it will; on level ground nothing is dammed (a design choice). */
const DRAINING_PERCENT = 5;
/** Cold air finds its way round: what stands up to 40 degrees to either side of straight downhill dams it. */
const SPREAD_DEG = 40;
const STEP_DEG = 10;

export interface ColdAir {
  readonly yard: Yard;
  /** What dams, looked for downhill; `null` on flat ground. */
  readonly dams: BarrierRays | null;
  /** Rise of the ground towards the point for each metre along each ray. */
  readonly risePerM: Float64Array;
  /** Share of the draining that the slope allows, 0-1. */
  readonly draining: number;
  readonly relief: boolean;
}

/** Hollows, rises, the even slope, and what dams the cold air that runs down it: closed walls, buildings, windbreaks. */
export function coldAir(yard: Yard): ColdAir {
  const { slope, things } = yard;
  const dams = things.flatMap((thing): Barrier[] => {
    if (thing.kind !== 'building' && thing.kind !== 'wall' && thing.kind !== 'windbreak') return [];
    if (thing.kind === 'wall' && thing.open) return [];
    return [{ thing, heightM: Math.min(DAM_MAX_M, thing.heightM), strength: 1 }];
  });
  const drains = slope !== null && slope.percent > 0 && dams.length > 0;
  return {
    yard,
    dams: drains ? barrierRays(dams, slope.towardsDeg, SPREAD_DEG, STEP_DEG) : null,
    risePerM: Float64Array.from(
      { length: (2 * SPREAD_DEG) / STEP_DEG + 1 },
      (_, ray) => ((slope?.percent ?? 0) / 100) * Math.cos(((ray * STEP_DEG - SPREAD_DEG) * Math.PI) / 180),
    ),
    draining: Math.min(1, (slope?.percent ?? 0) / DRAINING_PERCENT),
    relief: slope !== null || things.some(({ kind }) => kind === 'hollow' || kind === 'rise'),
  };
}

/**
 * Depth, m, of the cold air that dams downhill hold at a point: up to a dam's height; the mean over the rays, of each
 * the sum over the sides that fill its sector, and no more than the deepest of them.
 */
export function dammedDepthM({ dams, risePerM, draining }: ColdAir, eastM: number, northM: number): number {
  if (!dams) return 0;
  const { rays, sides, distanceM, filled } = dams;
  let sum = 0;
  for (let ray = 0; ray < rays; ray++) {
    lookAlong(dams, ray, eastM, northM);
    let deepest = 0;
    let all = 0;
    for (let side = 0; side < sides; side++) {
      if (filled[side] === 0) continue;
      const heightM = dams.heightM[side];
      const thinned = 1 - distanceM[side] / (POOL_HEIGHTS * heightM);
      const filledM = heightM - risePerM[ray] * distanceM[side];
      if (thinned <= 0 || filledM <= 0) continue;
      const depthM = filledM * thinned;
      if (depthM > deepest) deepest = depthM;
      all += depthM * filled[side];
    }
    sum += Math.min(deepest, all);
  }
  return (draining * sum) / rays;
}

/** Metres that a point lies below the open ground, dammed air counted as depth; below 0 on higher ground. */
export function coldAirDepthM(air: ColdAir, eastM: number, northM: number): number {
  const lowerM = air.relief ? -relativeHeightM(air.yard, [eastM, northM]) : 0;
  return lowerM + dammedDepthM(air, eastM, northM);
}

/** Share of the low spot's full effect, below 0 where the ground is high: linear in depth. */
export function coldAirShare(air: ColdAir, eastM: number, northM: number): number {
  return Math.min(1, Math.max(LEAST_SHARE, coldAirDepthM(air, eastM, northM) / FULL_DEPTH_M));
}
