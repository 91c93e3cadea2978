import type { LevelAnswer, Ranking, TypeAnswer } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import type { Level } from '../../analysis/tree/levels.ts';
import { sortPeriod } from '../format/answer-words.ts';

export interface RankRow {
  readonly type: TypeAnswer;
  readonly level: LevelAnswer;
}

export interface RankGroup {
  readonly use: 'eating' | 'cooking' | 'rootstock';
  readonly label: string;
  readonly rows: readonly RankRow[];
}

const GROUPS = [
  { use: 'eating', label: t`For eating` },
  { use: 'cooking', label: t`For cooking and flavour` },
  { use: 'rootstock', label: t`Rootstocks and their hybrids` },
] as const;

/** The types of an answer in groups, within each those first that cold takes most rarely. Rootstocks only when asked for. */
export function rankRows(assessment: Ranking, level: Level, showRootstocks: boolean): readonly RankGroup[] {
  const rows = assessment.types.flatMap((type): RankRow[] => {
    const answer = type.levels.find((entry) => entry.level === level);
    return answer ? [{ type, level: answer }] : [];
  });
  return GROUPS.filter(({ use }) => use !== 'rootstock' || showRootstocks)
    .map(({ use, label }) => ({
      use,
      label,
      rows: rows
        .filter(({ type }) => type.use === use)
        .sort(
          (a, b) =>
            byRarity(a.level, b.level) ||
            a.level.threshold_c - b.level.threshold_c ||
            a.type.name.localeCompare(b.type.name, 'en'),
        ),
    }))
    .filter(({ rows: list }) => list.length > 0);
}

/**
 * Rarest first. Fitted periods are compared where both are there: a headline beyond twice the record is a bound, and a
 * bound of a hardier kind can be shorter than the estimate of a tenderer one.
 */
function byRarity(a: LevelAnswer, b: LevelAnswer): number {
  const [first, second] = a.fitted && b.fitted ? [a.fitted, b.fitted] : [null, null];
  const rarity = (level: LevelAnswer, fitted: { period: number | null } | null) =>
    fitted ? (fitted.period ?? Number.MAX_VALUE) : sortPeriod(level);
  return rarity(b, second) - rarity(a, first);
}

/**
 * Rows that cold takes at most once in `periodWinters`, 10 or more, by the answer or the bound it gives: in whole winters,
 * as the rows show them, so that no row reads `1 winter in 20` and isn't counted as one.
 */
export function rarerThan(groups: readonly RankGroup[], periodWinters: number): readonly RankRow[] {
  const shown = ({ level }: RankRow): number => Math.round(sortPeriod(level));
  return groups.flatMap(({ rows }) => rows).filter((row) => shown(row) >= periodWinters);
}
