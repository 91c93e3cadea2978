import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { inQuotes, outsideLimits, type Limits } from './limits.ts';
import { MECHANISM_IDS } from './mechanism.ts';
import { pointProblem, thingName, thingProblem } from './thing-problems.ts';
import { PLOT_MAX_M, PLOT_MIN_M, THINGS_MAX, type Yard } from './yard.ts';

/** Something that keeps a yard from being reckoned with; `thingId` is the thing's or the spot's, `null` for the plot itself. */
export interface YardProblem {
  readonly thingId: string | null;
  readonly sentence: string;
}

/** Spots marked on one plan. */
export const SPOTS_MAX = 40;
/** Letters of a name, and of an id. */
const NAME_MAX = 60;
/** Degrees that a reader may set in place of the table's: the joint cap of spot and cover, °C. */
export const OWN_MAX_C = 10;

const SIDE = { least: PLOT_MIN_M, most: PLOT_MAX_M, unit: ' m' };
const WIDTH: Limits = { what: t`a width`, ...SIDE };
const DEPTH: Limits = { what: t`a depth`, ...SIDE };
const BEARING: Limits = { what: t`a bearing`, least: 0, most: 360, unit: '°' };
const FALL: Limits = { what: t`a fall`, least: 0, most: 100, unit: t`${''} m in 100 m` };
const WATER_DISTANCE: Limits = { what: t`a distance`, least: 0, most: 100_000, unit: ' m' };

function plotProblems(yard: Yard): string[] {
  const { slope, bigWater, own } = yard;
  const named = (subject: string, problem: string | null) =>
    problem === null ? [] : [t`${subject} ${problem}.`];
  return [
    ...(yard.name.length > NAME_MAX
      ? [t`The yard's name has ${yard.name.length} letters; at most ${NAME_MAX} are possible.`]
      : []),
    ...named(t`The plot`, outsideLimits(yard.widthM, WIDTH)),
    ...named(t`The plot`, outsideLimits(yard.depthM, DEPTH)),
    ...named(t`The cold wind`, outsideLimits(yard.coldWindFromDeg, BEARING)),
    ...(slope === null
      ? []
      : [
          ...named(t`The slope`, outsideLimits(slope.towardsDeg, BEARING)),
          ...named(t`The slope`, outsideLimits(slope.percent, FALL)),
        ]),
    ...(bigWater === null
      ? []
      : [
          ...named(t`The big water`, outsideLimits(bigWater.bearingDeg, BEARING)),
          ...named(t`The big water`, outsideLimits(bigWater.distanceM, WATER_DISTANCE)),
        ]),
    ...MECHANISM_IDS.flatMap((id) => {
      const set = own[id];
      if (set === undefined) return [];
      const limits = { least: -OWN_MAX_C, most: OWN_MAX_C, unit: ' °C' };
      return [
        ...named(
          t`Your own ${inQuotes(id)}`,
          outsideLimits(set.calmC, { what: t`a gain on calm nights`, ...limits }),
        ),
        ...named(
          t`Your own ${inQuotes(id)}`,
          outsideLimits(set.windyC, { what: t`a gain on windy nights`, ...limits }),
        ),
      ];
    }),
    ...(yard.things.length > THINGS_MAX
      ? [t`The yard holds ${yard.things.length} things; at most ${THINGS_MAX} are possible.`]
      : []),
    ...(yard.spots.length > SPOTS_MAX
      ? [t`The yard holds ${yard.spots.length} spots; at most ${SPOTS_MAX} are possible.`]
      : []),
  ];
}

function idProblem(id: string, taken: Set<string>): string | null {
  if (!/^[A-Za-z0-9-]+$/.test(id)) return t`has an id that is not made of letters, figures and hyphens`;
  if (id.length > NAME_MAX) return t`has an id of ${id.length} letters; at most ${NAME_MAX} are possible`;
  if (taken.has(id)) return t`has the id of another thing of the yard`;
  taken.add(id);
  return null;
}

/**
 * All that is wrong with a yard, one sentence each with its name, value and limit; empty: the yard can be reckoned
 * with. At most one for each thing and spot.
 */
export function yardProblems(yard: Yard): YardProblem[] {
  const problems: YardProblem[] = plotProblems(yard).map((sentence) => ({ thingId: null, sentence }));
  const ids = new Set<string>();
  for (const thing of yard.things) {
    const problem = idProblem(thing.id, ids) ?? thingProblem(thing, yard);
    if (problem !== null) problems.push({ thingId: thing.id, sentence: t`${thingName(thing)} ${problem}.` });
  }
  const names = new Set<string>();
  for (const spot of yard.spots) {
    let problem = idProblem(spot.id, ids) ?? pointProblem(spot.at, yard);
    if (spot.name.trim() === '') problem ??= t`has no name`;
    if (spot.name.length > NAME_MAX) {
      problem ??= t`has a name of ${spot.name.length} letters; at most ${NAME_MAX} are possible`;
    }
    if (names.has(spot.name)) problem ??= t`has the name of another spot`;
    names.add(spot.name);
    const name = spot.name.trim() === '' ? spot.id : spot.name;
    if (problem !== null)
      problems.push({ thingId: spot.id, sentence: t`The spot ${inQuotes(name)} ${problem}.` });
  }
  return problems;
}

/** @throws {InputError} with the first problem of a yard that can't be reckoned with */
export function checkYard(yard: Yard): void {
  const [first] = yardProblems(yard);
  if (first !== undefined) throw new InputError(first.sentence);
}
