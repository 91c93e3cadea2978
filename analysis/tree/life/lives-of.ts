import { YEARS_TO_BEAR_AGAIN } from '../bearing.ts';
import type { Reading, WinterMargins } from '../winter-margins.ts';
import { coverIndex } from '../nights-to-cover.ts';
import { lossBits } from './harm.ts';
import type { PlantingLife } from './life-shapes.ts';
import { treeYears, type TreeAges } from './tree-years.ts';

/** Winters over which crops are counted. */
export const CROP_WINTERS = 10;

export interface LivesQuestion extends TreeAges {
  readonly reading: Reading;
  /** Nights to cover, by `coverIndex`; `null` without a cover. */
  readonly nightsToCover?: Int16Array | null;
}

/** One planted tree, with what is counted over its first ten winters. */
export interface Life extends PlantingLife {
  /** Position of its first winter in the margins. */
  readonly start: number;
  readonly cropsInTen: number;
  readonly cropsInTenWithBloom: number;
}

export interface Lives {
  /** One a complete winter, oldest first. */
  readonly lives: readonly Life[];
  /** Complete winters into which a living tree old enough to bear went, over all plantings, and crops picked in them. */
  readonly cropsDue: number;
  readonly cropsPicked: number;
  /** Complete winters that a living tree went into, and nights to cover in them: all, and in the worst winter. */
  readonly wintersCovered: number;
  readonly nightsCovered: number;
  readonly mostNightsCovered: number;
}

const LETTER = Object.fromEntries([...'.cbflwkr?'].map((c) => [c, c.charCodeAt(0)])) as Record<
  string,
  number
>;

/**
 * Plants a tree before every complete winter and takes it through all the winters that follow on record. A leaf hit costs the
 * next crop, a wood hit three, during which the tree is tender as in its third year; a kill ends it. Losses seen in a
 * winter that isn't complete count, its crop doesn't, and a tree killed there has an unknown fate: such winters are known by
 * their losses only.
 */
export function livesOf(margins: WinterMargins, q: LivesQuestion): Lives {
  const { winter, complete } = margins;
  const count = winter.length;
  const years = treeYears(q, count);
  const bitsOf = (loss: Parameters<typeof lossBits>[2]): Uint8Array => lossBits(margins, q.reading, loss);
  const [flush, fruit, leaf, wood, kill] = (['flush', 'fruit', 'leaf', 'wood', 'kill'] as const).map(bitsOf);
  const nights = q.nightsToCover ?? null;
  const letters = new Uint8Array(count);
  const lives: Life[] = [];
  let [cropsDue, cropsPicked, wintersCovered, nightsCovered, mostNightsCovered] = [0, 0, 0, 0, 0];

  for (let start = 0; start < count; start++) {
    if (!complete[start]) continue;
    let [regrowing, without, bloomHit, a] = [0, 0, false, 0];
    let [crops, cropsInTen, cropsInTenWithBloom] = [0, 0, 0];
    let fate: PlantingLife['fate'] = 'living';
    for (; start + a < count && fate === 'living'; a++) {
      const j = start + a;
      const state = regrowing > 0 ? years.regrowing[a]! : years.grown[a]!;
      const seen = complete[j] === 1;
      const due = a + 1 >= years.firstCrop;
      const bearing = due && without === 0;
      const lost = bearing && (fruit![j]! & state) !== 0;
      const picked = bearing && !lost && seen;
      if (picked) {
        crops++;
        if (a < CROP_WINTERS) {
          cropsInTen++;
          if (!bloomHit) cropsInTenWithBloom++;
        }
      }
      if (due && seen) cropsDue++;
      if (picked) cropsPicked++;
      if (nights && seen) {
        const ageClass = (regrowing > 0 ? years.regrowingClass : years.ageClass)[a]!;
        const night = nights[coverIndex(j, ageClass, bearing)]!;
        wintersCovered++;
        nightsCovered += night;
        if (night > mostNightsCovered) mostNightsCovered = night;
      }
      let letter = !seen ? '?' : !due ? '.' : !bearing ? 'r' : bloomHit ? 'b' : 'c';
      if (lost) letter = 'f';
      bloomHit = (flush![j]! & state) !== 0;
      if (regrowing > 0) regrowing--;
      if (without > 0) without--;
      if (leaf![j]! & state) {
        letter = 'l';
        without = Math.max(without, YEARS_TO_BEAR_AGAIN.leaf);
      }
      if (wood![j]! & state) {
        letter = 'w';
        regrowing = without = YEARS_TO_BEAR_AGAIN.wood;
      }
      if (kill![j]! & state) {
        letter = 'k';
        fate = seen ? 'killed' : 'unknown';
      }
      letters[a] = LETTER[letter]!;
    }
    lives.push({
      winter: winter[start]!,
      fate,
      years: fate === 'living' ? a : a - 1,
      crops,
      course: String.fromCharCode(...letters.subarray(0, a)),
      start,
      cropsInTen,
      cropsInTenWithBloom,
    });
  }
  return { lives, cropsDue, cropsPicked, wintersCovered, nightsCovered, mostNightsCovered };
}
