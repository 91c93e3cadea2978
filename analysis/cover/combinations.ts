import type { LevelGainSpreads } from '../tree/level-gains.ts';
import { LEVELS, type Level } from '../tree/levels.ts';
import { coverGains } from './cover-gains.ts';
import { CONDITIONS_OF_COVER, type CoverId } from './cover-ids.ts';
import { checkCoverIds, findMeasure, MEASURES, type Effort, type Measure } from './measures.ts';
import { refusals } from './refusals.ts';

/** Measures that may be used together, what they gain and the work of all. */
export interface Combination {
  readonly ids: readonly CoverId[];
  readonly gains: LevelGainSpreads;
  readonly effort: Effort;
}

const ENDS = ['lowC', 'centreC', 'highC'] as const;

/**
 * Sensible combinations of the candidates, least effort first, beginning with none at all: at most one of each group, lights
 * only with their confirmation, nothing that is refused, and none that another of less effort equals at the levels asked for.
 * Conditions (`tied`, `lights-confirmed`) are used only when they are candidates.
 * Effort is the sum of ranks, then of the minutes of ten nights and the season.
 * @throws InputError for an unknown id
 */
export function combinations(
  candidates: readonly string[],
  levels: readonly Level[] = LEVELS,
): readonly Combination[] {
  const known = checkCoverIds(candidates);
  const options = choicesByGroup(known);
  const all = options
    .reduce<CoverId[][]>(
      (sets, choices) => sets.flatMap((set) => choices.map((choice) => [...set, ...choice])),
      [[]],
    )
    .filter((ids) => refusals(ids).length === 0)
    .map((ids): Combination => ({ ids, gains: coverGains(ids), effort: effortOf(ids) }))
    .sort((a, b) => a.effort.rank - b.effort.rank || tenNights(a.effort) - tenNights(b.effort));
  const kept: Combination[] = [];
  for (const one of all)
    if (!kept.some((before) => gainsAsMuch(before.gains, one.gains, levels))) kept.push(one);
  return kept;
}

/** Whether `more` gains at least as much as `less` at every level asked for, kind of night and end. */
export function gainsAsMuch(
  more: LevelGainSpreads,
  less: LevelGainSpreads,
  levels: readonly Level[] = LEVELS,
): boolean {
  return levels.every((level) =>
    (['calm', 'windy'] as const).every((night) =>
      ENDS.every((end) => more[level][night][end] >= less[level][night][end] - 1e-9),
    ),
  );
}

function choicesByGroup(known: readonly CoverId[]): CoverId[][][] {
  const groups = new Map<Measure['group'], CoverId[][]>();
  for (const { id, group, requires, tieable } of MEASURES) {
    if (!known.includes(id) || (requires && !known.includes(requires))) continue;
    const choices = groups.get(group) ?? [[]];
    choices.push(requires ? [id, requires] : [id]);
    if (tieable && known.includes('tied')) choices.push([id, 'tied']);
    groups.set(group, choices);
  }
  return [...groups.values()];
}

/** Work of all the measures together. */
export function effortOf(ids: readonly CoverId[]): Effort {
  const efforts = ids.flatMap((id): Effort[] => {
    const effort = findMeasure(id)?.effort;
    if (effort) return [effort];
    const condition = CONDITIONS_OF_COVER.find((one) => one.id === id);
    return condition ? [{ seasonMinutes: 0, nightMinutes: 0, rank: condition.effortRank }] : [];
  });
  const sum = (part: keyof Effort): number => efforts.reduce((total, effort) => total + effort[part], 0);
  return { seasonMinutes: sum('seasonMinutes'), nightMinutes: sum('nightMinutes'), rank: sum('rank') };
}

function tenNights({ seasonMinutes, nightMinutes }: Effort): number {
  return seasonMinutes + 10 * nightMinutes;
}
