import { distanceToOutlines } from './mechanisms/areas.ts';
import {
  distanceToSides,
  outlinesOf,
  segmentsOf,
  sidesOfLine,
  type Outlines,
  type Segments,
} from './segments.ts';
import type { Yard } from './yard.ts';

/** Half of the thickness of a wall and of a windbreak, m: the drawing gives none. */
const WALL_HALF_M = 0.1;
const WINDBREAK_HALF_M = 0.5;

/** Ground on which no tree can stand. */
export interface GroundTaken {
  readonly buildingsAndWater: Outlines;
  readonly paving: Outlines;
  readonly walls: Segments;
  readonly windbreaks: Segments;
}

export function groundTaken({ things }: Pick<Yard, 'things'>): GroundTaken {
  return {
    buildingsAndWater: outlinesOf(
      things.flatMap((thing) => (thing.kind === 'building' || thing.kind === 'water' ? [thing.outline] : [])),
    ),
    paving: outlinesOf(things.flatMap((thing) => (thing.kind === 'paving' ? [thing.outline] : []))),
    walls: segmentsOf(things.flatMap((thing) => (thing.kind === 'wall' ? sidesOfLine(thing.line) : []))),
    windbreaks: segmentsOf(
      things.flatMap((thing) => (thing.kind === 'windbreak' ? sidesOfLine(thing.line) : [])),
    ),
  };
}

/** Distance, m, to the nearest building, water, wall or windbreak, 0 or less on it. */
export function roomToStandM(taken: GroundTaken, eastM: number, northM: number): number {
  return Math.min(
    distanceToOutlines(taken.buildingsAndWater, eastM, northM),
    distanceToSides(taken.walls, eastM, northM) - WALL_HALF_M,
    distanceToSides(taken.windbreaks, eastM, northM) - WINDBREAK_HALF_M,
  );
}

/**
 * Whether a building, water, wall or windbreak covers a point. Walls are taken to be at least `2 * lineHalfM` thick, so
 * that they stay whole on a grid.
 */
export function coversGround(taken: GroundTaken, eastM: number, northM: number, lineHalfM: number): boolean {
  return (
    distanceToOutlines(taken.buildingsAndWater, eastM, northM) === 0 ||
    distanceToSides(taken.walls, eastM, northM) <= Math.max(WALL_HALF_M, lineHalfM) ||
    distanceToSides(taken.windbreaks, eastM, northM) <= Math.max(WINDBREAK_HALF_M, lineHalfM)
  );
}
