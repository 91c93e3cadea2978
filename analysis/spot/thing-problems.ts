import { t } from '../language/t.ts';
import { inQuotes, outsideLimits, shown, type Limits } from './limits.ts';
import { lineLengthM, selfCrossing, signedAreaM2 } from './outline.ts';
import {
  CORNERS_MAX,
  PLOT_MAX_M,
  THING_HEIGHT_MAX_M,
  THING_HEIGHT_MIN_M,
  type PlanPoint,
  type Yard,
  type YardThing,
} from './yard.ts';

/** Shorter walls and smaller outlines are taken for slips of the hand. */
const LENGTH_MIN_M = 0.05;
const AREA_MIN_M2 = 0.01;
/** How far over the plot's edge a corner may lie: what rounding does to a corner on the edge. */
const EDGE_M = 1e-6;

const RISING = { least: THING_HEIGHT_MIN_M, most: THING_HEIGHT_MAX_M, unit: ' m' };
const HEIGHT: Limits = { what: t`a height`, ...RISING };
const UNDERSIDE: Limits = {
  what: t`a height of the underside`,
  least: 0,
  most: THING_HEIGHT_MAX_M,
  unit: ' m',
};
const DENSITY: Limits = { what: t`a density`, least: 0, most: 1, unit: '' };
const DEPTH: Limits = { what: t`a depth`, ...RISING };
const RADIUS: Limits = { what: t`a radius`, least: THING_HEIGHT_MIN_M, most: PLOT_MAX_M, unit: ' m' };

const KIND_WORDS: Record<YardThing['kind'], string> = {
  building: t`The building`,
  wall: t`The wall`,
  canopy: t`The canopy`,
  paving: t`The paving`,
  water: t`The pond`,
  ground: t`The ground`,
  windbreak: t`The windbreak`,
  hollow: t`The hollow`,
  rise: t`The high point`,
};

/** What a thing is called at the start of sentences: "The wall 2" for one that is numbered by its kind (`wall-2`), else its id in quotes. */
export function thingName({ kind, id }: Pick<YardThing, 'kind' | 'id'>): string {
  const number = id.startsWith(`${kind}-`) ? id.slice(kind.length + 1) : '';
  return /^\d+$/.test(number) ? `${KIND_WORDS[kind]} ${number}` : `${KIND_WORDS[kind]} ${inQuotes(id)}`;
}

/** What is wrong with where a point lies, said after the name of what it belongs to; `null`: nothing. */
export function pointProblem([eastM, northM]: PlanPoint, { widthM, depthM }: Yard): string | null {
  if (!Number.isFinite(eastM) || !Number.isFinite(northM)) return t`has a corner that is not a number`;
  if (eastM >= -EDGE_M && northM >= -EDGE_M && eastM <= widthM + EDGE_M && northM <= depthM + EDGE_M)
    return null;
  return t`reaches outside the plot, to ${shown(eastM)} m east and ${shown(northM)} m north; the plot is ${shown(widthM)} by ${shown(depthM)} m`;
}

function cornersProblem(corners: readonly PlanPoint[], least: number, yard: Yard): string | null {
  if (corners.length < least) {
    return corners.length === 1
      ? t`has 1 corner; at least ${least} are needed`
      : t`has ${corners.length} corners; at least ${least} are needed`;
  }
  if (corners.length > CORNERS_MAX)
    return t`has ${corners.length} corners; at most ${CORNERS_MAX} are possible`;
  for (const corner of corners) {
    const problem = pointProblem(corner, yard);
    if (problem !== null) return problem;
  }
  return null;
}

function outlineProblem(outline: readonly PlanPoint[], yard: Yard): string | null {
  const problem = cornersProblem(outline, 3, yard);
  if (problem !== null) return problem;
  const crossing = selfCrossing(outline);
  if (crossing !== null) {
    const [eastM, northM] = crossing;
    return t`has an outline that crosses itself, at ${shown(eastM)} m east and ${shown(northM)} m north`;
  }
  const areaM2 = Math.abs(signedAreaM2(outline));
  return areaM2 < AREA_MIN_M2
    ? t`has an area of ${shown(areaM2)} m²; at least ${shown(AREA_MIN_M2)} m² is needed`
    : null;
}

function lineProblem(line: readonly PlanPoint[], yard: Yard): string | null {
  const problem = cornersProblem(line, 2, yard);
  if (problem !== null) return problem;
  const lengthM = lineLengthM(line);
  return lengthM < LENGTH_MIN_M
    ? t`has a length of ${shown(lengthM)} m; at least ${shown(LENGTH_MIN_M)} m is needed`
    : null;
}

function measuresProblem(thing: YardThing): string | null {
  switch (thing.kind) {
    case 'building':
    case 'wall':
    case 'windbreak':
      return outsideLimits(thing.heightM, HEIGHT);
    case 'canopy':
      return (
        outsideLimits(thing.heightM, HEIGHT) ??
        outsideLimits(thing.baseM, UNDERSIDE) ??
        outsideLimits(thing.density, DENSITY) ??
        (thing.baseM >= thing.heightM
          ? t`has its underside at ${shown(thing.baseM)} m; it must be below its top at ${shown(thing.heightM)} m`
          : null)
      );
    case 'hollow':
      return outsideLimits(thing.byM, DEPTH) ?? outsideLimits(thing.radiusM, RADIUS);
    case 'rise':
      return outsideLimits(thing.byM, HEIGHT) ?? outsideLimits(thing.radiusM, RADIUS);
    default:
      return null;
  }
}

/** What is wrong with a thing, as the end of a sentence that begins with its name; `null`: nothing. */
export function thingProblem(thing: YardThing, yard: Yard): string | null {
  if ('outline' in thing) return outlineProblem(thing.outline, yard) ?? measuresProblem(thing);
  if ('line' in thing) return lineProblem(thing.line, yard) ?? measuresProblem(thing);
  return pointProblem(thing.at, yard) ?? measuresProblem(thing);
}
