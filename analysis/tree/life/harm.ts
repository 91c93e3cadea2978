import { MISSING_HUNDREDTHS } from '../../records/nights.ts';
import type { Loss, Reading, WinterMargins } from '../winter-margins.ts';
import { isHit, LOSSES, MARGINS_A_WINTER, marginIndex } from '../winter-margins.ts';
import { YEARS_TO_BEAR_AGAIN } from '../bearing.ts';
import { TREE_STATES, type TreeYears } from './tree-years.ts';

/** States that lose something in each winter, one bit a state: see {@link TREE_STATES}. */
export type LossBits = Uint8Array;

/** @param colder added to every margin, hundredths of °C */
export function lossBits(margins: WinterMargins, reading: Reading, loss: Loss, colder = 0): LossBits {
  const all = stateMargins(margins, reading, loss);
  const bits = new Uint8Array(margins.winter.length);
  for (let i = 0; i < all.length; i++) {
    if (isHit(all[i]!, colder)) bits[Math.floor(i / TREE_STATES)]! |= 1 << (i % TREE_STATES);
  }
  return bits;
}

/** Margins of one loss, a block of {@link TREE_STATES} a winter. */
export function stateMargins({ winter, margins }: WinterMargins, reading: Reading, loss: Loss): Int16Array {
  const out = new Int16Array(winter.length * TREE_STATES);
  for (let s = 0; s < TREE_STATES; s++) {
    const first = marginIndex(0, { reading, ageClass: s >> 1, bearing: s % 2 === 1 }) + LOSSES.indexOf(loss);
    for (let j = 0; j < winter.length; j++) out[j * TREE_STATES + s] = margins[first + j * MARGINS_A_WINTER]!;
  }
  return out;
}

/** What decides how long a tree lives, over winters in the order in which it meets them. */
export interface Harm {
  readonly kill: LossBits;
  readonly wood: LossBits;
  /** First winter from each on in which some state loses life or wood; one entry more than winters, the last past the end. */
  readonly next: Int16Array;
}

/** As {@link Harm}, to be filled again and again. */
export function emptyHarm(winters: number): Harm {
  return {
    kill: new Uint8Array(winters),
    wood: new Uint8Array(winters),
    next: new Int16Array(winters + 1).fill(winters),
  };
}

/** Fills `next` once the bits stand. */
export function linkHarm({ kill, wood, next }: Harm): void {
  let at = kill.length;
  next[at] = at;
  for (let j = at - 1; j >= 0; j--) {
    if (kill[j]! | wood[j]!) at = j;
    next[j] = at;
  }
}

/** Whether no winter takes wood or life from a tree of any age. */
function isHarmless({ next }: Harm): boolean {
  return next[0] === next.length - 1;
}

/**
 * Age at which a tree planted before winter `start` is killed, 0 if it outlives `oldest` winters. The same rules as
 * `livesOf` keeps, told without the crops: winters without harm are leapt over.
 * @param oldest winters it is followed; `start + oldest` at most the number of winters, and `years` told that far
 */
export function killAge(harm: Harm, years: TreeYears, start: number, oldest: number): number {
  const { kill, wood, next } = harm;
  let regrowing = 0;
  for (let a = 0; ; a++) {
    const j = next[start + a]!;
    regrowing -= j - start - a;
    a = j - start;
    if (a >= oldest) return 0;
    const state = regrowing > 0 ? years.regrowing[a]! : years.grown[a]!;
    if (kill[j]! & state) return a + 1;
    if (wood[j]! & state) regrowing = YEARS_TO_BEAR_AGAIN.wood;
    else regrowing--;
  }
}

/** Trees killed by age (entry 0: in their first winter), planted before each of the first `plantings` winters; written to `deaths`. */
export function countDeaths(harm: Harm, years: TreeYears, plantings: number, deaths: Int32Array): void {
  deaths.fill(0);
  if (isHarmless(harm)) return;
  for (let start = 0; start < plantings; start++) {
    const age = killAge(harm, years, start, deaths.length);
    if (age > 0) deaths[age - 1]!++;
  }
}

/** Largest margin of each winter over all states: nothing is lost where even this one is no hit. */
export function largestMargins(stateMargins: Int16Array): Int16Array {
  const out = new Int16Array(stateMargins.length / TREE_STATES).fill(MISSING_HUNDREDTHS);
  for (let i = 0; i < stateMargins.length; i++) {
    const j = Math.floor(i / TREE_STATES);
    out[j] = Math.max(out[j]!, stateMargins[i]!);
  }
  return out;
}
