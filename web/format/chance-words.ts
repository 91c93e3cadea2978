import type { LevelAnswer } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import { formatChance } from './numbers.ts';

/** The chance of at least one hit in the years told of, with its range: `34% (20% to 51%)`, `at most 9%`; `''` where it is not known. */
export function chanceWords({
  chance_in_years: { p, low, high },
}: Pick<LevelAnswer, 'chance_in_years'>): string {
  if (p === null) return '';
  if (p === 0 && high !== null) return t`at most ${formatChance(high)}`;
  if (low === null || high === null) return formatChance(p);
  const [from, to] = [formatChance(low), formatChance(high)];
  // Ends that both read as the figure itself say nothing more.
  return from === to && from === formatChance(p) ? from : t`${formatChance(p)} (${from} to ${to})`;
}
