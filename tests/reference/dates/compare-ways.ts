import { normalQuantile } from '../../../analysis/math/normal.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import { DATE_CHANCES } from '../../../analysis/answer/year.ts';
import { SEASON_DAYS } from '../../../analysis/winter/season-day.ts';

/**
 * A way to tell the day by which a night has come in `chance` of all winters: from the days of the winters that had one,
 * ascending, and the number of all winters. Only asked where at least `chance` of them had one.
 */
export type DateWay = (days: readonly number[], winters: number, chance: number) => number;

/** Order statistics of all winters, those without one last; `(i - a)/(n + 1 - 2a)`; the latest day seen at the end. */
const ranked =
  (a: number): DateWay =>
  (days, winters, chance) =>
    between(days, chance * (winters + 1 - 2 * a) + a);

/** Share with a night apart, then a normal distribution of the days of the others (Thom and Shaw 1958). */
export const normalDates: DateWay = (days, winters, chance) => {
  const inOthers = (chance * winters) / days.length;
  if (inOthers >= 1) return days.at(-1)!;
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  const squares = days.reduce((sum, day) => sum + (day - mean) ** 2, 0);
  return mean + Math.sqrt(squares / Math.max(1, days.length - 1)) * normalQuantile(inOthers);
};

export const DATE_WAYS: Readonly<Record<string, DateWay>> = {
  weibull: ranked(0),
  hazen: ranked(0.5),
  'r type 7': ranked(1),
  'weibull, winters with one alone': (days, winters, chance) =>
    between(days, ((chance * winters) / days.length) * (days.length + 1)),
  'normal (Thom and Shaw)': normalDates,
};

function between(ascending: readonly number[], rank: number): number {
  const at = Math.min(ascending.length, Math.max(1, rank)) - 1;
  const below = Math.floor(at);
  const above = Math.min(below + 1, ascending.length - 1);
  return ascending[below] + (at - below) * (ascending[above] - ascending[below]);
}

/** What came of one way, summed. */
export interface WayScore {
  /** Quantile loss of winters left out, days. A winter without one counts as one on the last day of the season. */
  loss: number;
  losses: number;
  /** By chance: winters left out that a day was told for, and how many had one by then. */
  readonly told: number[];
  readonly come: number[];
}

export function noScores(): Record<string, WayScore> {
  const none = (): number[] => DATE_CHANCES.map(() => 0);
  return Object.fromEntries(
    Object.keys(DATE_WAYS).map((way) => [way, { loss: 0, losses: 0, told: none(), come: none() }]),
  );
}

/**
 * Draws `kept` winters of a series, tells dates from them by each way and asks the others, `times` over.
 * @param series day of each winter, NaN without one
 */
export function scoreWays(
  series: readonly number[],
  kept: number,
  times: number,
  seed: number,
  scores: Record<string, WayScore>,
): void {
  const random = seededRandom(seed);
  const order = [...series];
  for (let t = 0; t < times; t++) {
    for (let i = 0; i < kept; i++) {
      const j = i + random.index(order.length - i);
      [order[i], order[j]] = [order[j], order[i]];
    }
    const days = order
      .slice(0, kept)
      .filter((day) => !Number.isNaN(day))
      .sort((a, b) => a - b);
    DATE_CHANCES.forEach((chance, c) => {
      const few = days.length === 0 || days.length / kept < chance;
      for (const [name, way] of Object.entries(DATE_WAYS)) {
        const score = scores[name];
        const told = few ? SEASON_DAYS : Math.min(SEASON_DAYS, way(days, kept, chance));
        for (const left of order.slice(kept)) {
          const came = Number.isNaN(left) ? SEASON_DAYS : left;
          score.loss += (chance - (came < told ? 1 : 0)) * (came - told);
          score.losses++;
          if (few) continue;
          score.told[c]++;
          if (came <= told) score.come[c]++;
        }
      }
    });
  }
}
