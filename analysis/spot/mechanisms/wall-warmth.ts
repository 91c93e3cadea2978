import { signedAreaM2 } from '../outline.ts';
import {
  segmentsOf,
  sidesOfLine,
  sidesOfOutline,
  squaredDistanceTo,
  type Segments,
  type Side,
} from '../segments.ts';
import type { Yard } from '../yard.ts';

/** The table's rows speak of "within 1 to 2 m". */
const FULL_WITHIN_M = 1.5;
/** Distance over which a wall's warmth then falls to 37 %: a design choice, no source. */
const DECAY_M = 2;
/** Lower walls do less, in proportion to their height: a design choice, no source. */
const FULL_HEIGHT_M = 2.4;

/** Faces of walls and buildings that can warm what stands before them. */
export interface WarmFaces {
  readonly segments: Segments;
  /** Unit vector out of the face. */
  readonly outEast: Float64Array;
  readonly outNorth: Float64Array;
  /** Share of the full stored warmth (aspect, height, masonry) and of the full heating (height, heated) at the face, 0-1. */
  readonly stored: Float64Array;
  readonly heating: Float64Array;
  readonly owners: readonly { readonly building: boolean; readonly heated: boolean }[];
}

interface Face {
  readonly side: Side;
  readonly heightM: number;
  readonly building: boolean;
  readonly masonry: boolean;
  readonly heated: boolean;
}

/** Outward faces of the buildings, both faces of the masonry walls. */
export function warmFaces(yard: Pick<Yard, 'things'>, latDeg: number): WarmFaces {
  const faces = yard.things.flatMap((thing): Face[] => {
    if (thing.kind === 'building' && (thing.heated || thing.masonry)) {
      const anticlockwise = signedAreaM2(thing.outline) > 0;
      return sidesOfOutline(thing.outline).map((side) => ({
        ...thing,
        building: true,
        side: anticlockwise ? side : [side[1], side[0]],
      }));
    }
    if (thing.kind !== 'wall' || !thing.masonry) return [];
    return sidesOfLine(thing.line).flatMap(([from, to]): Face[] => [
      { ...thing, building: false, heated: false, side: [from, to] },
      { ...thing, building: false, heated: false, side: [to, from] },
    ]);
  });
  const height = faces.map(({ heightM }) => Math.min(1, heightM / FULL_HEIGHT_M));
  const out = faces.map(({ side: [from, to] }) => {
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    return [(to[1] - from[1]) / lengthM, (from[0] - to[0]) / lengthM];
  });
  return {
    segments: segmentsOf(faces.map(({ side }) => side)),
    outEast: Float64Array.from(out, ([east]) => east),
    outNorth: Float64Array.from(out, ([, north]) => north),
    stored: Float64Array.from(faces, ({ masonry }, at) =>
      masonry ? height[at] * sunnyAspect(out[at][0], out[at][1], latDeg) : 0,
    ),
    heating: Float64Array.from(faces, ({ heated }, at) => (heated ? height[at] : 0)),
    owners: faces.map(({ building, heated }) => ({ building, heated })),
  };
}

/**
 * How much of the sun's warmth a wall keeps for the night by its aspect, 0-1: all of it from facing the equator to facing
 * west, less by the cosine of the angle beyond, nothing where it faces east or away from the equator.
 */
export function sunnyAspect(outEast: number, outNorth: number, latDeg: number): number {
  const towardsEquator = latDeg < 0 ? outNorth : -outNorth;
  const west = -outEast;
  if (towardsEquator >= 0 && west >= 0) return 1;
  return Math.max(0, towardsEquator, west);
}

/** Share of a face's warmth that reaches a point: nothing behind it, less beside it than before it, less with distance. */
export function reach(faces: WarmFaces, face: number, eastM: number, northM: number): number {
  const { segments, outEast, outNorth } = faces;
  const beforeM =
    (eastM - segments.fromEast[face]) * outEast[face] + (northM - segments.fromNorth[face]) * outNorth[face];
  if (beforeM <= 0) return 0;
  const distanceM = Math.sqrt(squaredDistanceTo(segments, face, eastM, northM));
  // Whole up to 45° aside, so that round a corner one face takes over from the other without a gap.
  const turned = Math.min(1, (Math.SQRT2 * beforeM) / distanceM);
  return distanceM <= FULL_WITHIN_M ? turned : turned * Math.exp((FULL_WITHIN_M - distanceM) / DECAY_M);
}

/**
 * Shares of the full stored warmth and of the full heating at a point, 0-1: each from the face that gives most of it.
 * @param out where to write: stored first, heating second
 */
export function wallShares(faces: WarmFaces, eastM: number, northM: number, out: Float64Array): void {
  const { stored, heating, segments } = faces;
  out[0] = 0;
  out[1] = 0;
  for (let face = 0; face < segments.count; face++) {
    if (stored[face] <= out[0] && heating[face] <= out[1]) continue;
    const reached = reach(faces, face, eastM, northM);
    if (reached * stored[face] > out[0]) out[0] = reached * stored[face];
    if (reached * heating[face] > out[1]) out[1] = reached * heating[face];
  }
}
