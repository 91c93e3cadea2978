import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { combine } from './combine.ts';
import { groundTaken, roomToStandM } from './ground-taken.ts';
import type { MechanismId } from './mechanism.ts';
import { distanceToOutlines } from './mechanisms/areas.ts';
import { fieldStepM } from './offset-field.ts';
import {
  offsetAt,
  prepareYard,
  type PreparedYard,
  type SpotMechanism,
  type SpotOffset,
} from './offset-at.ts';
import { isWithin, outlinesOf } from './segments.ts';
import { findShares } from './spot-shares.ts';
import { winterSunHours } from './sun-hours.ts';
import { warmWallPlainly } from './why.ts';
import type { PlanPoint, Yard } from './yard.ts';

/** Winter sun that a spot should get, hours a day (common practice, no source). */
export const ENOUGH_SUN_HOURS = 4;
/** Degrees on windy nights count half of those on calm ones: calm nights are most of the cold ones (a design choice). */
const WINDY_WEIGHT = 0.5;
/** Spots that differ by less are as mild as each other; then the sunnier one comes first, °C. */
const ALIKE_C = 0.1;

/** Told last: they don't set one spot of a yard apart from another. */
const ALIKE_EVERYWHERE: ReadonlySet<MechanismId> = new Set(['slope', 'big-water']);

export interface BestSpotWishes {
  /** Width of the grown tree, m: half of it stays free all round, and spots lie at least this far apart. */
  readonly grownWidthM: number;
  readonly count: number;
}

export interface BestSpot {
  readonly at: PlanPoint;
  readonly offset: SpotOffset;
  /** Mean hours of direct sun a day in the three months round the winter solstice. */
  readonly sunHours: number;
  /** A plain sentence or two, without degrees. */
  readonly why: string;
}

type Candidate = Pick<BestSpot, 'at' | 'sunHours'>;

/**
 * The mildest spots with room for the grown tree, those with enough winter sun first; fewer than asked for, or none,
 * where there is no room.
 */
export function bestSpots(
  yard: Yard,
  latDeg: number,
  { grownWidthM = 3, count = 3 }: Partial<BestSpotWishes> = {},
): BestSpot[] {
  const prepared = prepareYard(yard, latDeg);
  const chosen: Candidate[] = [];
  const shady: Candidate[] = [];
  const choose = (candidate: Candidate) => {
    const clear = chosen.every(({ at }) => distanceM(at, candidate.at) >= grownWidthM);
    if (clear && chosen.length < count) chosen.push(candidate);
  };
  // The sun costs most to find, so only as many places are asked for theirs as it takes.
  for (const places of byMildness(prepared, placesWithRoom(yard, grownWidthM))) {
    if (chosen.length >= count) break;
    const sunniest = places
      .map((at) => ({ at, sunHours: winterSunHours(prepared.obstacles, at, latDeg) }))
      .sort((a, b) => b.sunHours - a.sunHours);
    for (const candidate of sunniest) {
      if (candidate.sunHours >= ENOUGH_SUN_HOURS) choose(candidate);
      else shady.push(candidate);
    }
  }
  shady.forEach(choose);
  return chosen.map(({ at, sunHours }) => {
    const offset = offsetAt(prepared, at);
    return { at, offset, sunHours, why: reasons(offset, sunHours, () => warmWallPlainly(prepared, at)) };
  });
}

/** Cells' middles of the field with the grown tree's room: on the plot, clear of what stands, of water and paving. */
function placesWithRoom(yard: Yard, grownWidthM: number): PlanPoint[] {
  const stepM = fieldStepM(yard);
  const halfM = grownWidthM / 2;
  const taken = groundTaken(yard);
  // A tree grows about as high as it is wide; under a lower crown it would grow into it.
  const low = outlinesOf(
    yard.things.flatMap((thing) =>
      thing.kind === 'canopy' && thing.baseM < grownWidthM ? [thing.outline] : [],
    ),
  );
  const places: PlanPoint[] = [];
  for (let northM = stepM / 2; northM <= yard.depthM - halfM; northM += stepM) {
    if (northM < halfM) continue;
    for (let eastM = stepM / 2; eastM <= yard.widthM - halfM; eastM += stepM) {
      if (eastM < halfM || roomToStandM(taken, eastM, northM) < halfM) continue;
      if (distanceToOutlines(taken.paving, eastM, northM) < halfM) continue;
      const under = low.areaM2.some((_, k) =>
        isWithin(low.segments, eastM, northM, low.first[k], low.first[k + 1]),
      );
      if (!under) places.push([eastM, northM]);
    }
  }
  return places;
}

/** Places in groups that are about as mild as each other, mildest group first. */
function byMildness(prepared: PreparedYard, places: readonly PlanPoint[]): PlanPoint[][] {
  const groups = new Map<number, PlanPoint[]>();
  for (const place of places) {
    const mildness = mildnessOf(prepared, place);
    const group = groups.get(mildness);
    if (group) group.push(place);
    else groups.set(mildness, [place]);
  }
  return [...groups].sort(([a], [b]) => b - a).map(([, group]) => group);
}

/** In steps of `ALIKE_C`. */
function mildnessOf(prepared: PreparedYard, [eastM, northM]: PlanPoint): number {
  const { calm, windy, overhead } = findShares(prepared, eastM, northM);
  combine(prepared.calm, calm, overhead[0]);
  combine(prepared.windy, windy, overhead[0]);
  return Math.round((prepared.calm.total[1] + WINDY_WEIGHT * prepared.windy.total[1]) / ALIKE_C);
}

function distanceM([eastA, northA]: PlanPoint, [eastB, northB]: PlanPoint): number {
  return Math.hypot(eastA - eastB, northA - northB);
}

/** What a spot's score has of a mechanism, °C. */
function weighed({ gain }: SpotMechanism): number {
  return gain.calm.centreC + WINDY_WEIGHT * gain.windy.centreC;
}

function reasons({ mechanisms }: SpotOffset, sunHours: number, plainWall: () => string): string {
  const sunWarmed = mechanisms.find(({ id }) => id === 'warm-wall')?.why;
  const told = [...mechanisms]
    .sort((a, b) => Math.abs(weighed(b)) - Math.abs(weighed(a)))
    .sort((a, b) => Number(ALIKE_EVERYWHERE.has(a.id)) - Number(ALIKE_EVERYWHERE.has(b.id)))
    // A wall that is both heated and warmed by the sun is told of once.
    .map((mechanism) => ({
      weight: weighed(mechanism),
      why: sunWarmed && mechanism.why === plainWall() ? sunWarmed : mechanism.why,
    }));
  const milder = [...new Set(told.filter(({ weight }) => weight > 0).map(({ why }) => why))];
  const colder = told.filter(({ weight }) => weight <= 0).map(({ why }) => why);
  const good = milder.length > 0 ? milder.slice(0, 3).join('; ') : t`open ground`;
  const bad = colder.length > 0 ? t`; but ${colder[0]}` : '';
  const hours = sayFigure(sunHours, 1);
  const sun =
    sunHours >= ENOUGH_SUN_HOURS
      ? t`${hours} hours of winter sun a day.`
      : t`Only ${hours} hours of winter sun a day; no better spot with room has ${ENOUGH_SUN_HOURS}.`;
  return `${good[0].toUpperCase()}${good.slice(1)}${bad}. ${sun}`;
}
