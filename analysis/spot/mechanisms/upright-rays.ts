import type { Side } from '../segments.ts';

/** Something upright that stands in the way of moving air. */
export interface Barrier {
  readonly kind: 'building' | 'wall' | 'windbreak';
  readonly side: Side;
  readonly heightM: number;
  /** Share of its full effect, 0-1. */
  readonly strength: number;
}

/**
 * Barriers seen along a few neighbouring bearings. Per ray and barrier: the two ends across the ray (`crossFrom` below
 * `crossTo`), how far along the ray the first end lies, and how that changes across.
 */
export interface BarrierRays {
  readonly rays: number;
  readonly barriers: number;
  readonly alongEast: Float64Array;
  readonly alongNorth: Float64Array;
  readonly crossFrom: Float64Array;
  readonly crossTo: Float64Array;
  readonly alongFrom: Float64Array;
  readonly alongPerCross: Float64Array;
  readonly heightM: Float64Array;
  readonly strength: Float64Array;
  readonly kinds: readonly Barrier['kind'][];
  /** Working room: distances of the ray looked along last. */
  readonly distanceM: Float64Array;
}

/** @param bearingsDeg directions looked into, degrees clockwise from north */
export function barrierRays(barriers: readonly Barrier[], bearingsDeg: readonly number[]): BarrierRays {
  const alongEast = Float64Array.from(bearingsDeg, (bearing) => Math.sin((bearing * Math.PI) / 180));
  const alongNorth = Float64Array.from(bearingsDeg, (bearing) => Math.cos((bearing * Math.PI) / 180));
  const seen = bearingsDeg.flatMap((_, ray) =>
    barriers.map(({ side }) => {
      const ends = side.map(([east, north]) => ({
        cross: east * alongNorth[ray] - north * alongEast[ray],
        along: east * alongEast[ray] + north * alongNorth[ray],
      }));
      const [a, b] = ends[0].cross <= ends[1].cross ? ends : [ends[1], ends[0]];
      const width = b.cross - a.cross;
      return { a, b, slope: width > 0 ? (b.along - a.along) / width : 0 };
    }),
  );
  return {
    rays: bearingsDeg.length,
    barriers: barriers.length,
    alongEast,
    alongNorth,
    crossFrom: Float64Array.from(seen, ({ a }) => a.cross),
    crossTo: Float64Array.from(seen, ({ b }) => b.cross),
    alongFrom: Float64Array.from(seen, ({ a }) => a.along),
    alongPerCross: Float64Array.from(seen, ({ slope }) => slope),
    heightM: Float64Array.from(barriers, ({ heightM }) => heightM),
    strength: Float64Array.from(barriers, ({ strength }) => strength),
    kinds: barriers.map(({ kind }) => kind),
    distanceM: new Float64Array(barriers.length),
  };
}

/** Writes the distance, m, along a ray from a point to each barrier into `rays.distanceM`; -1 where the ray misses it. */
export function lookAlong(rays: BarrierRays, ray: number, eastM: number, northM: number): void {
  const { barriers, crossFrom, crossTo, alongFrom, alongPerCross, distanceM } = rays;
  const cross = eastM * rays.alongNorth[ray] - northM * rays.alongEast[ray];
  const along = eastM * rays.alongEast[ray] + northM * rays.alongNorth[ray];
  const first = ray * barriers;
  for (let barrier = 0; barrier < barriers; barrier++) {
    const at = first + barrier;
    distanceM[barrier] = -1;
    if (cross < crossFrom[at] || cross > crossTo[at]) continue;
    const distance = alongFrom[at] + alongPerCross[at] * (cross - crossFrom[at]) - along;
    if (distance >= 0) distanceM[barrier] = distance;
  }
}
