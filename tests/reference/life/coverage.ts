import { gevQuantile } from '../../../analysis/extremes/gev.ts';
import { normalCdf } from '../../../analysis/math/normal.ts';
import { seededRandom, type SeededRandom } from '../../../analysis/math/seeded-random.ts';
import { emptyHarm, killAge, linkHarm, lossBits } from '../../../analysis/tree/life/harm.ts';
import { lifeRanges } from '../../../analysis/tree/life/life-ranges.ts';
import type { AgeShare } from '../../../analysis/tree/life/life-shapes.ts';
import { readingOf } from '../../../analysis/tree/life/reading-of.ts';
import { makeRings } from '../../../analysis/tree/life/rings.ts';
import { HORIZON_YEARS, treeYears } from '../../../analysis/tree/life/tree-years.ts';
import { withRange } from '../../../analysis/tree/life/with-range.ts';
import { killCFor, marginsOfValues } from './invented-margins.ts';

/** How histories of one kind are made. */
export interface History {
  readonly winters: number;
  /** A mature tree with a crop is killed about 1 winter in this. */
  readonly killOneIn: number;
  /** Years since planting that the tree counts in its first winter: 6 is mature at once, so that the chance is the same at every age. */
  readonly startAgeYears: number;
  /** Correlation of each winter with the one before (of its normal score): 0 where winters are independent. */
  readonly serial: number;
}

/** Share of 90 % ranges that hold the true share living, and by how much they miss on either side. */
export interface Coverage {
  readonly age: number;
  readonly truth: number;
  readonly held: number;
  /** The whole range lies above the truth (the dangerous side), below it. */
  readonly above: number;
  readonly below: number;
  readonly meanWidth: number;
  /** The same ranges by Greenwood's formula, as if plantings had nothing to do with each other. */
  readonly greenwoodHeld: number;
  readonly greenwoodMeanWidth: number;
}

const WINTERS_GEV = { location: 0, scale: 2, k: 0.1 };
const AGES = [10, 20];

export function coverageOf(
  history: History,
  repetitions: number,
  q: { draws: number; block?: number; truthWinters?: number },
): Coverage[] {
  const ages = { startAgeYears: history.startAgeYears, firstCropYear: 3 };
  const killC = killCFor(-gevQuantile(1 - 1 / history.killOneIn, WINTERS_GEV));
  const truth = trueShares(history, ages, killC, q.truthWinters ?? 400_000);
  const random = seededRandom(
    history.winters * 1000 + history.killOneIn * 10 + history.startAgeYears + 7 * history.serial,
  );
  const tally = AGES.map(() => ({ held: 0, above: 0, below: 0, width: 0, greenwood: 0, greenwoodWidth: 0 }));
  for (let r = 0; r < repetitions; r++) {
    const margins = marginsOfValues(winterValues(history, history.winters, random), killC);
    const reading = readingOf(margins, { ...ages, reading: 'hardened', killEnds: { low: 0, high: 0 } });
    const rings = makeRings({ complete: margins.complete, random, draws: q.draws, block: q.block });
    const steps = lifeRanges(rings, [{ ...ages, margins, reading: 'hardened' }], q.draws);
    let step = steps.next();
    while (!step.done) step = steps.next();
    const { living } = withRange(reading, step.value[0]!);
    AGES.forEach((age, i) => {
      const { low, high } = living[age - 1]!;
      const t = tally[i]!;
      const share = truth[age - 1]!;
      if (low! > share) t.above++;
      else if (high! < share) t.below++;
      else t.held++;
      t.width += high! - low!;
      const green = greenwood(reading.living, age, history.winters);
      if (green.low <= share && share <= green.high) t.greenwood++;
      t.greenwoodWidth += green.high - green.low;
    });
  }
  const part = (count: number): number => Number((count / repetitions).toFixed(4));
  return tally.map((t, i) => ({
    age: AGES[i]!,
    truth: Number(truth[AGES[i]! - 1]!.toFixed(4)),
    held: part(t.held),
    above: part(t.above),
    below: part(t.below),
    meanWidth: part(t.width),
    greenwoodHeld: part(t.greenwood),
    greenwoodMeanWidth: part(t.greenwoodWidth),
  }));
}

/** Coldest values of winters in a row, °C. */
function winterValues({ serial }: History, count: number, random: SeededRandom): Float64Array {
  const values = new Float64Array(count);
  let score = random.normal();
  for (let i = 0; i < count; i++) {
    values[i] = -gevQuantile(normalCdf(score), WINTERS_GEV);
    score = serial * score + Math.sqrt(1 - serial ** 2) * random.normal();
  }
  return values;
}

/** Share of trees living at each age, by brute force: one planted in each of very many winters in a row. */
function trueShares(
  history: History,
  ages: { startAgeYears: number; firstCropYear: number },
  killC: number,
  winters: number,
): Float64Array {
  const chunk = 20_000;
  const random = seededRandom(4711);
  const years = treeYears(ages, HORIZON_YEARS);
  const dead = new Float64Array(HORIZON_YEARS);
  let planted = 0;
  for (let done = 0; done < winters; done += chunk) {
    const margins = marginsOfValues(winterValues(history, chunk, random), killC);
    const harm = {
      ...emptyHarm(chunk),
      kill: lossBits(margins, 'hardened', 'kill'),
      wood: lossBits(margins, 'hardened', 'wood'),
    };
    linkHarm(harm);
    for (let start = 0; start + HORIZON_YEARS <= chunk; start++) {
      const age = killAge(harm, years, start, HORIZON_YEARS);
      planted++;
      if (age > 0) dead[age - 1]!++;
    }
  }
  let living = planted;
  return dead.map((d) => (living -= d) / planted);
}

/** 90 % range of the share at an age from Greenwood's variance (1926). */
function greenwood(living: readonly AgeShare[], age: number, winters: number): { low: number; high: number } {
  const share = living[age - 1]!.kaplan_meier;
  let sum = 0;
  let before = 1;
  for (const at of living.slice(0, age)) {
    // With complete winters everyone whose record reaches an age and who lived to it is at risk there.
    const dies = before > 0 ? 1 - at.kaplan_meier! / before : 0;
    const atRisk = dies < 1 ? at.alive / (1 - dies) : winters;
    if (atRisk > 0 && dies < 1) sum += dies / (atRisk * (1 - dies));
    before = at.kaplan_meier!;
  }
  const half = 1.645 * (share ?? 0) * Math.sqrt(sum);
  return { low: share! - half, high: share! + half };
}
