import { relativeHeightM } from '../relief.ts';
import { sidesOfLine, sidesOfOutline } from '../segments.ts';
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
/** Steeper ground than this drains; on flatter ground nothing is dammed (a design choice). */
const DRAINING_PERCENT = 2;
/** Cold air finds its way round: straight downhill and four bearings on either side. */
const SPREAD_DEG = Array.from({ length: 9 }, (_, k) => 10 * (k - 4));

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
    const sides = thing.kind === 'building' ? sidesOfOutline(thing.outline) : sidesOfLine(thing.line);
    return sides.map((side) => ({
      kind: thing.kind,
      side,
      heightM: Math.min(DAM_MAX_M, thing.heightM),
      strength: 1,
    }));
  });
  return {
    yard,
    dams:
      slope && slope.percent > 0 && dams.length > 0
        ? barrierRays(
            dams,
            SPREAD_DEG.map((spread) => slope.towardsDeg + spread),
          )
        : null,
    risePerM: Float64Array.from(
      SPREAD_DEG,
      (spread) => ((slope?.percent ?? 0) / 100) * Math.cos((spread * Math.PI) / 180),
    ),
    draining: Math.min(1, (slope?.percent ?? 0) / DRAINING_PERCENT),
    relief: slope !== null || things.some(({ kind }) => kind === 'hollow' || kind === 'rise'),
  };
}

/** Depth, m, of the cold air that a dam downhill holds at a point: up to the dam's height, mean over the rays. */
export function dammedDepthM({ dams, risePerM, draining }: ColdAir, eastM: number, northM: number): number {
  if (!dams) return 0;
  let sum = 0;
  for (let ray = 0; ray < dams.rays; ray++) {
    let deepest = 0;
    lookAlong(dams, ray, eastM, northM);
    for (let dam = 0; dam < dams.barriers; dam++) {
      const heightM = dams.heightM[dam];
      const distanceM = dams.distanceM[dam];
      if (distanceM < 0 || heightM <= deepest || distanceM >= POOL_HEIGHTS * heightM) continue;
      const depthM = (heightM - risePerM[ray] * distanceM) * (1 - distanceM / (POOL_HEIGHTS * heightM));
      if (depthM > deepest) deepest = depthM;
    }
    sum += deepest;
  }
  return (draining * sum) / dams.rays;
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
