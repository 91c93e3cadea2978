import type { WinterDates } from './dated-winters.ts';
import { SEASON_DAYS } from './season-day.ts';
import type { WinterDraws } from './winter-draws.ts';

/** A day told for a chance, with its 90 % range; days as `seasonDayOf` counts them, fractions between two winters' days. */
export interface ChancedDay {
  readonly chance: number;
  /** `null`: no more winters than that have such a night. */
  readonly day: number | null;
  /** Earlier and later end; `null` at the far end: maybe no such night in that many winters. */
  readonly low: number | null;
  readonly high: number | null;
}

/** First and last dates of nights at or below a limit: winters without any, and days in the others. */
export interface SeasonDates {
  readonly winters: number;
  readonly without: number;
  readonly first: readonly ChancedDay[];
  readonly last: readonly ChancedDay[];
  /** Earliest first and latest last day seen. */
  readonly earliest: number | null;
  readonly latest: number | null;
}

/** Range of 90 %. */
const TAIL = 0.05;
const LAST_DAY = SEASON_DAYS - 1;

/**
 * Dates by chance over all winters, those without such a night included (a mixed distribution: Thom and Shaw 1958; the
 * freeze probabilities of NOAA, S44): `first`, the day by which in `chance` of all winters the first night has come;
 * `last`, the day on or after which one comes in `chance` of all winters.
 *
 * Days are order statistics by Weibull's rule `i/(n + 1)` over all winters, those without a night beyond the far end: so
 * the day told for a chance keeps its promise on winters left out (table in the room's README), and a colder limit never
 * comes earlier. A chance that only winters without a night would make up has no day: 6 of 60 winters are not quite
 * one in ten of those to come. Ranges: the same from winters drawn anew.
 * @param chances increasing, each between 0 and 1
 * @throws RangeError when the draws are of another number of winters
 */
export function seasonDates(
  { first, last }: WinterDates,
  draws: WinterDraws,
  chances: readonly number[],
): SeasonDates {
  if (draws.winters !== first.length)
    throw new RangeError(`Draws of ${draws.winters} winters don't fit ${first.length} winters.`);
  const firsts = inOrder(first);
  // Counted back from the season's end, last dates are first ones.
  const back = last.map((day) => LAST_DAY - day);
  const lasts = inOrder(back);
  const forward = (day: number | null): number | null => (day === null ? null : LAST_DAY - day);
  return {
    winters: first.length,
    without: first.length - firsts.length,
    first: chancedDays(first, firsts, draws, chances),
    last: chancedDays(back, lasts, draws, chances).map(({ chance, day, low, high }) => ({
      chance,
      day: forward(day),
      low: forward(high),
      high: forward(low),
    })),
    earliest: firsts.length === 0 ? null : first[firsts[0]],
    latest: lasts.length === 0 ? null : last[lasts[0]],
  };
}

/** The same without a winter to tell from. */
export function noSeasonDates(chances: readonly number[]): SeasonDates {
  const none = chances.map((chance) => ({ chance, day: null, low: null, high: null }));
  return { winters: 0, without: 0, first: none, last: none, earliest: null, latest: null };
}

/** Winters that have a day, earliest first. */
function inOrder(days: Float64Array): Int32Array {
  const having = Int32Array.from(days.keys()).filter((w) => !Number.isNaN(days[w]));
  return having.sort((a, b) => days[a] - days[b] || a - b);
}

function chancedDays(
  days: Float64Array,
  order: Int32Array,
  { winters, draws, times }: WinterDraws,
  chances: readonly number[],
): ChancedDay[] {
  const told = new Float64Array(chances.length);
  // Rounded, so that 0.1 of 29 + 1 is 3 and no hair more.
  const ranks = chances.map((chance) => Math.max(1, Math.round(1e9 * chance * (winters + 1)) / 1e9));
  daysAtRanks(days, order, new Uint16Array(winters).fill(1), 0, ranks, told);
  const centre = [...told];
  const tallies = chances.map(() => new Uint32Array(SEASON_DAYS));
  for (let draw = 0; draw < draws; draw++) {
    daysAtRanks(days, order, times, draw * winters, ranks, told);
    for (let c = 0; c < chances.length; c++) if (!Number.isNaN(told[c])) tallies[c][Math.round(told[c])]++;
  }
  return chances.map((chance, c) => {
    const low = reached(tallies[c], TAIL * draws);
    const high = reached(tallies[c], (1 - TAIL) * draws);
    if (Number.isNaN(centre[c])) return { chance, day: null, low, high };
    const day = centre[c];
    return { chance, day, low: Math.min(low ?? day, day), high: high === null ? null : Math.max(high, day) };
  });
}

/**
 * Day of each rank in a draw, into `told`, between two winters where a rank lies between them; NaN where fewer winters have
 * a night.
 * @param order winters that have a day, earliest first
 * @param times how often each winter came up, from `offset` on
 * @param ranks increasing, from 1
 */
function daysAtRanks(
  days: Float64Array,
  order: Int32Array,
  times: Uint16Array,
  offset: number,
  ranks: readonly number[],
  told: Float64Array,
): void {
  let having = 0;
  for (let i = 0; i < order.length; i++) having += times[offset + order[i]];
  let at = -1;
  let passed = 0;
  for (let r = 0; r < ranks.length; r++) {
    const rank = ranks[r];
    told[r] = NaN;
    if (rank > having) continue;
    const below = Math.floor(rank);
    while (passed < below) passed += times[offset + order[++at]];
    told[r] = days[order[at]];
    if (rank === below || passed > below) continue;
    let next = at + 1;
    while (times[offset + order[next]] === 0) next++;
    told[r] += (rank - below) * (days[order[next]] - told[r]);
  }
}

/** The day by which so many draws are reached; `null`: more than those with a day. */
function reached(tally: Uint32Array, wanted: number): number | null {
  let sum = 0;
  for (let day = 0; day < tally.length; day++) {
    sum += tally[day];
    if (sum >= wanted) return day;
  }
  return null;
}
