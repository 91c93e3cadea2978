import { productLimit, riskSets } from '../../extremes/kaplan-meier.ts';
import { quantileType7Sorted } from '../../math/quantile.ts';
import type { WinterMargins } from '../winter-margins.ts';
import { countDeaths, emptyHarm, linkHarm, lossBits } from './harm.ts';
import type { AgeShare, CropCount, LifeReading, PlantingLife } from './life-shapes.ts';
import { CROP_WINTERS, livesOf, type Life, type Lives, type LivesQuestion } from './lives-of.ts';
import { firstCropWinter, HORIZON_YEARS, treeYears } from './tree-years.ts';
import { watchedSpans, type PlantedEnd } from './watched.ts';

export interface ReadingQuestion extends LivesQuestion {
  /** How far the hardy (below 0) and the tender end (above 0) of the type's kill threshold lie from its centre, hundredths of °C. */
  readonly killEnds: { readonly low: number; readonly high: number };
}

/** What the record tells of one type and reading; ranges come with `withRange`. */
export function readingOf(margins: WinterMargins, q: ReadingQuestion): LifeReading {
  const { complete } = margins;
  const count = complete.length;
  const all = livesOf(margins, q);
  const ends = all.lives.map(({ start, years, fate }) => ({
    start,
    winters: fate === 'living' ? years : years + 1,
    killed: fate === 'killed',
  }));
  const watched = sharesWatched(ends, complete);
  const shares = sharesRound(margins, q, 0);
  const hardy = sharesRound(margins, q, q.killEnds.low);
  const tender = sharesRound(margins, q, q.killEnds.high);
  const followed = new Int32Array(HORIZON_YEARS);
  const alive = new Int32Array(HORIZON_YEARS);
  for (const { start, years } of all.lives) {
    for (let a = 0; a < Math.min(HORIZON_YEARS, count - start); a++) {
      followed[a]!++;
      if (years > a) alive[a]!++;
    }
  }
  const living = Array.from({ length: HORIZON_YEARS }, (_, i): AgeShare => {
    return {
      age: i + 1,
      followed: followed[i]!,
      alive: alive[i]!,
      share: shares[i]!,
      low: null,
      high: null,
      kaplan_meier: watched[i]!,
      basis: followed[i]! > 0 ? 'record' : 'round',
      if_threshold: { low: hardy[i]!, high: tender[i]! },
    };
  });
  const half = living.find(({ share }) => share !== null && share <= 0.5);
  return {
    living,
    first_crop: living[firstCropWinter(q) - 1]!,
    ten_years: living[9]!,
    twenty_years: living[19]!,
    median_years: { years: half?.age ?? null, low: null, high: null },
    ...cropsOf(all, complete),
    nights_covered: coveredOf(all, q),
    plantings: all.lives.map(({ winter, fate, years, crops, course }): PlantingLife => ({
      winter,
      fate,
      years,
      crops,
      course,
    })),
  };
}

/** Kaplan-Meier estimate by age; `null` from the first age on that no living tree was watched at. */
function sharesWatched(ends: Iterable<PlantedEnd>, complete: Uint8Array): (number | null)[] {
  const sets = riskSets(watchedSpans(ends, complete), HORIZON_YEARS);
  const share = productLimit(sets);
  const unknownFrom = sets.atRisk.findIndex((atRisk, a) => atRisk === 0 && (a === 0 || share[a - 1]! > 0));
  return Array.from(share, (s, a) => (unknownFrom >= 0 && a >= unknownFrom ? null : s));
}

/**
 * Share living by age of trees planted in every complete winter and followed round the record; `null` without such a winter.
 * Unlike Kaplan-Meier's it can't rise with more cold: there a death moves to an age at which more trees are watched, and late ages
 * are watched in the first winters alone.
 * @param colder hundredths of °C by which the kill threshold is warmer
 */
function sharesRound(margins: WinterMargins, q: ReadingQuestion, colder: number): (number | null)[] {
  const whole = [...margins.complete.keys()].filter((j) => margins.complete[j] === 1);
  const { length } = whole;
  if (length === 0) return new Array<null>(HORIZON_YEARS).fill(null);
  const harm = emptyHarm(length + HORIZON_YEARS);
  const kill = lossBits(margins, q.reading, 'kill', colder);
  const wood = lossBits(margins, q.reading, 'wood');
  for (let i = 0; i < harm.kill.length; i++) {
    harm.kill[i] = kill[whole[i % length]!]!;
    harm.wood[i] = wood[whole[i % length]!]!;
  }
  linkHarm(harm);
  const deaths = new Int32Array(HORIZON_YEARS);
  countDeaths(harm, treeYears(q, HORIZON_YEARS), length, deaths);
  let living = length;
  return Array.from(deaths, (died) => (living -= died) / length);
}

/** Crops of plantings whose first ten winters all lie on record and are complete, and how many crops are lost of ten. */
function cropsOf(
  { lives, cropsDue, cropsPicked }: Lives,
  complete: Uint8Array,
): Pick<LifeReading, 'crops_in_ten' | 'crops_in_ten_with_bloom' | 'crops_lost_in_ten'> {
  const whole = lives.filter(({ start }) => {
    if (start + CROP_WINTERS > complete.length) return false;
    for (let j = start; j < start + CROP_WINTERS; j++) if (!complete[j]) return false;
    return true;
  });
  return {
    crops_in_ten: cropCount(whole, (life) => life.cropsInTen),
    crops_in_ten_with_bloom: cropCount(whole, (life) => life.cropsInTenWithBloom),
    crops_lost_in_ten: cropsDue === 0 ? null : (10 * (cropsDue - cropsPicked)) / cropsDue,
  };
}

function cropCount(lives: readonly Life[], crops: (life: Life) => number): CropCount | null {
  if (lives.length === 0) return null;
  const ascending = lives.map(crops).sort((a, b) => a - b);
  return {
    plantings: ascending.length,
    median: quantileType7Sorted(ascending, 0.5),
    worst_tenth: ascending[Math.ceil(ascending.length / 10) - 1]!,
  };
}

function coveredOf(
  { wintersCovered, nightsCovered, mostNightsCovered }: Lives,
  { nightsToCover }: LivesQuestion,
): LifeReading['nights_covered'] {
  if (!nightsToCover || wintersCovered === 0) return null;
  return { mean: nightsCovered / wintersCovered, worst: mostNightsCovered };
}
