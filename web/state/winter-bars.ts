import { durationWeights, SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import type { Ranking, WinterHistory } from '../../analysis/answer/assessment.ts';
import type { Level } from '../../analysis/tree/levels.ts';
import type { WinterBar } from '../charts/winter-bars.ts';

/** A winter's coldest sustained cold for any number of hours, °C, linear between the kept ones; `null` unknown. */
export function coldestAtC(history: WinterHistory, hours: number): number | null {
  const { lower, weight } = durationWeights(hours);
  const a = history.m_c[String(SUSTAINED_HOURS[lower])] ?? null;
  if (weight === 0 || a === null) return a;
  const b = history.m_c[String(SUSTAINED_HOURS[lower + 1])] ?? null;
  return b === null ? null : a + weight * (b - a);
}

/** The winters of an answer as the chart wants them, with the reason where one is not complete. */
export function winterBars(assessment: Ranking, hours: number, level: Level): readonly WinterBar[] {
  const graft = level === 'kill' ? assessment.graft_history : null;
  const reasons = new Map(assessment.winters.left_out.map(({ winter, reason }) => [winter, reason]));
  return (graft ?? assessment.history).map((history) => ({
    winter: history.winter,
    complete: history.complete,
    valueC: coldestAtC(history, hours),
    reason: reasons.get(history.winter),
  }));
}
