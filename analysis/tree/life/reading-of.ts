import { productLimit, riskSets } from '../../extremes/kaplan-meier.ts';
import { quantileType7Sorted } from '../../math/quantile.ts';
import type { WinterMargins } from '../winter-margins.ts';
import { emptyHarm, killAge, linkHarm, lossBits } from './harm.ts';
import type { AgeShare, CropCount, LifeReading, PlantingLife } from './life-shapes.ts';
import { CROP_WINTERS, livesOf, type Life, type Lives, type LivesQuestion } from './lives-of.ts';
import { firstCropWinter, HORIZON_YEARS, treeYears } from './tree-years.ts';
import { watchedSpans, type PlantedEnd } from './watched.ts';

export interface ReadingQuestion extends LivesQuestion {
  /** How far the hardy (below 0) and the tender end (above 0) of the type's kill threshold lie from its centre, hundredths of °C. */
  readonly killEnds: { readonly low: number; readonly high: number };
}

/** What the record tells of one type and reading; ranges, and shares older than the record, come with `withRange`. */
export function readingOf(margins: WinterMargins, q: ReadingQuestion): LifeReading {
  const { complete } = margins;
  const count = complete.length;
  const all = livesOf(margins, q);
  const ends = all.lives.map(({ start, years, fate }) => ({
    start,
    winters: fate === 'living' ? years : years + 1,
    killed: fate === 'killed',
  }));
  const shares = sharesByAge(ends, complete);
  const hardy = sharesByAge(endsIf(margins, q, q.killEnds.low), complete);
  const tender = sharesByAge(endsIf(margins, q, q.killEnds.high), complete);
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
      basis: shares[i] === null ? 'reordered' : 'record',
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

/** Kaplan-Meier share living by age; `null` from the first age on that no living tree was watched at. */
function sharesByAge(ends: Iterable<PlantedEnd>, complete: Uint8Array): (number | null)[] {
  const sets = riskSets(watchedSpans(ends, complete), HORIZON_YEARS);
  const share = productLimit(sets);
  const unknownFrom = sets.atRisk.findIndex((atRisk, a) => atRisk === 0 && (a === 0 || share[a - 1]! > 0));
  return Array.from(share, (s, a) => (unknownFrom >= 0 && a >= unknownFrom ? null : s));
}

/** How far the trees come should the kill threshold lie `colder` hundredths of °C warmer. */
function endsIf(margins: WinterMargins, q: ReadingQuestion, colder: number): PlantedEnd[] {
  const { complete } = margins;
  const count = complete.length;
  const harm = {
    ...emptyHarm(count),
    kill: lossBits(margins, q.reading, 'kill', colder),
    wood: lossBits(margins, q.reading, 'wood'),
  };
  linkHarm(harm);
  const years = treeYears(q, count);
  const ends: PlantedEnd[] = [];
  for (let start = 0; start < count; start++) {
    if (!complete[start]) continue;
    const age = killAge(harm, years, start, count - start);
    const winters = age || count - start;
    ends.push({ start, winters, killed: age > 0 && complete[start + age - 1] === 1 });
  }
  return ends;
}

/** Crops of plantings whose first ten winters all lie on record and are complete, and how many crops are lost of ten. */
function cropsOf(
  { lives, cropsCarried, cropsLost }: Lives,
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
    crops_lost_in_ten: cropsCarried === 0 ? null : (10 * cropsLost) / cropsCarried,
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
