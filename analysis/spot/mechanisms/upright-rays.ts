import { signedAreaM2 } from '../outline.ts';
import { sidesOfLine, sidesOfOutline, type Side } from '../segments.ts';
import type { Building, Wall, Windbreak } from '../yard.ts';

/** Something upright that stands in the way of moving air. */
export interface Barrier {
  readonly thing: Building | Wall | Windbreak;
  readonly heightM: number;
  /** Share of its full effect, 0-1. */
  readonly strength: number;
}

/**
 * Sides of barriers seen along a fan of bearings, each of which stands for the sector about it. Per ray and side: the
 * two ends across the ray (`crossFrom` below `crossTo`), how far along the ray the first end lies, and how that changes
 * across. Of a building only the sides turned towards whoever looks count.
 */
export interface BarrierRays {
  readonly rays: number;
  readonly sides: number;
  /** Half of a sector's width at 1 m. */
  readonly halfWidth: number;
  readonly alongEast: Float64Array;
  readonly alongNorth: Float64Array;
  readonly crossFrom: Float64Array;
  readonly crossTo: Float64Array;
  readonly alongFrom: Float64Array;
  readonly alongPerCross: Float64Array;
  readonly heightM: Float64Array;
  readonly strength: Float64Array;
  readonly kinds: readonly Barrier['thing']['kind'][];
  /** Working room of the ray looked along last: distance to each side, and the share of the sector that it fills. */
  readonly distanceM: Float64Array;
  readonly filled: Float64Array;
}

/** Sides in the sense in which a building lies to their left. */
function sidesOf(thing: Barrier['thing']): Side[] {
  if (thing.kind !== 'building') return sidesOfLine(thing.line);
  const sides = sidesOfOutline(thing.outline);
  return signedAreaM2(thing.outline) > 0 ? sides : sides.map(([from, to]): Side => [to, from]);
}

/**
 * @param middleDeg bearing looked into, degrees clockwise from north
 * @param reachDeg how far the fan reaches to either side
 * @param stepDeg width of a sector
 */
export function barrierRays(
  barriers: readonly Barrier[],
  middleDeg: number,
  reachDeg: number,
  stepDeg: number,
): BarrierRays {
  const count = 2 * Math.round(reachDeg / stepDeg) + 1;
  const bearings = Array.from({ length: count }, (_, k) => middleDeg - reachDeg + k * stepDeg);
  const alongEast = Float64Array.from(bearings, (bearing) => Math.sin((bearing * Math.PI) / 180));
  const alongNorth = Float64Array.from(bearings, (bearing) => Math.cos((bearing * Math.PI) / 180));
  const sides = barriers.flatMap((barrier) => sidesOf(barrier.thing).map((side) => ({ ...barrier, side })));
  const seen = bearings.flatMap((_, ray) =>
    sides.map(({ side, thing }) => {
      const [from, to] = side.map(([east, north]) => ({
        cross: east * alongNorth[ray] - north * alongEast[ray],
        along: east * alongEast[ray] + north * alongNorth[ray],
      }));
      const [a, b] = from.cross <= to.cross ? [from, to] : [to, from];
      const turnedAway = thing.kind === 'building' && from.cross > to.cross;
      const width = b.cross - a.cross;
      return {
        from: turnedAway ? Infinity : a.cross,
        to: turnedAway ? Infinity : b.cross,
        along: a.along,
        slope: width > 0 ? (b.along - a.along) / width : 0,
      };
    }),
  );
  return {
    rays: count,
    sides: sides.length,
    halfWidth: Math.tan((stepDeg * Math.PI) / 360),
    alongEast,
    alongNorth,
    crossFrom: Float64Array.from(seen, ({ from }) => from),
    crossTo: Float64Array.from(seen, ({ to }) => to),
    alongFrom: Float64Array.from(seen, ({ along }) => along),
    alongPerCross: Float64Array.from(seen, ({ slope }) => slope),
    heightM: Float64Array.from(sides, ({ heightM }) => heightM),
    strength: Float64Array.from(sides, ({ strength }) => strength),
    kinds: sides.map(({ thing }) => thing.kind),
    distanceM: new Float64Array(sides.length),
    filled: new Float64Array(sides.length),
  };
}

/** Looks along a ray from a point: writes `rays.distanceM`, and `rays.filled`, which is 0 for sides not met. */
export function lookAlong(rays: BarrierRays, ray: number, eastM: number, northM: number): void {
  const { sides, halfWidth, crossFrom, crossTo, alongFrom, alongPerCross, distanceM, filled } = rays;
  const cross = eastM * rays.alongNorth[ray] - northM * rays.alongEast[ray];
  const along = eastM * rays.alongEast[ray] + northM * rays.alongNorth[ray];
  for (let side = 0, at = ray * sides; side < sides; side++, at++) {
    const from = crossFrom[at];
    const to = crossTo[at];
    filled[side] = 0;
    const nearest = cross < from ? from : cross > to ? to : cross;
    const distance = alongFrom[at] + alongPerCross[at] * (nearest - from) - along;
    const half = halfWidth * distance;
    if (!(distance > 0) || nearest - cross > half || cross - nearest > half) continue;
    const upper = cross + half < to ? cross + half : to;
    const lower = cross - half > from ? cross - half : from;
    distanceM[side] = distance;
    filled[side] = (upper - lower) / (2 * half);
  }
}
