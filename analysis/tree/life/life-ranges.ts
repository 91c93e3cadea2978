import { MISSING_HUNDREDTHS } from '../../records/nights.ts';
import { quantileType7InPlace } from '../../math/quantile.ts';
import type { Reading, WinterMargins } from '../winter-margins.ts';
import { countDeaths, emptyHarm, largestMargins, linkHarm, stateMargins, type Harm } from './harm.ts';
import type { Rings } from './rings.ts';
import { HORIZON_YEARS, TREE_STATES, treeYears, type TreeAges, type TreeYears } from './tree-years.ts';

/** One type read in one way. */
export interface RangedTree extends TreeAges {
  readonly margins: WinterMargins;
  readonly reading: Reading;
  /**
   * Chance a winter of being killed that a curve through the place's winters bounds from above (90 % range), where that is less
   * than the record's length alone allows; left out where no curve says so.
   */
  readonly killAtMost?: number | null;
}

/** 5 and 95 % of the draws, by age from 1. */
export interface LifeRange {
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Age that half the trees reach, Infinity beyond the horizon. */
  readonly medianLow: number;
  readonly medianHigh: number;
}

/**
 * 90 % ranges of many trees from the same rings. A generator: each step runs a few draws for all trees and yields how
 * many are done, so that a worker can tell of its progress and drop the work between steps; it returns one range a tree.
 *
 * In each draw a tree is planted at every place of the ring and followed round it. The share living at age `a` is then
 * lowered by `(1 - p)^a`, `p` the draw's chance of a winter worse than any on record. Such a winter is taken to kill at
 * any age and of any type: how cold it would be is just what the record can't tell. So the low end of a tree that no
 * winter on record killed is what a count of 0 in n allows, and no range ends at 1 unless every planting lived. Where a curve
 * bounds the chance of a kill more closely (`killAtMost`), `p` is made smaller in that proportion.
 */
export function* lifeRanges(
  rings: Rings,
  trees: readonly RangedTree[],
  drawsAStep = 10,
): Generator<number, LifeRange[]> {
  const walks = trees.map((tree) => new RingWalk(rings, tree));
  for (let draw = 0; draw < rings.draws; draw++) {
    for (const walk of walks) walk.run(draw);
    if ((draw + 1) % drawsAStep === 0) yield draw + 1;
  }
  return walks.map((walk) => walk.range());
}

class RingWalk {
  private readonly unseenPart: number;
  private readonly years: TreeYears;
  private readonly harm: Harm;
  private readonly kill: Int16Array;
  private readonly wood: Int16Array;
  private readonly mostKill: Int16Array;
  private readonly mostWood: Int16Array;
  /** Shares of all draws at each age in turn. */
  private readonly shares: Float64Array;
  private readonly medians: Float64Array;
  private readonly deaths = new Int32Array(HORIZON_YEARS);

  constructor(
    private readonly rings: Rings,
    { margins, reading, killAtMost = null, ...ages }: RangedTree,
  ) {
    this.unseenPart = killAtMost === null ? 1 : Math.min(1, killAtMost / rings.unseenAtMost);
    this.years = treeYears(ages, HORIZON_YEARS);
    // A ring is laid out once round and as far again as the oldest age, so that a walk needs no turning.
    this.harm = emptyHarm(rings.length + HORIZON_YEARS);
    this.kill = stateMargins(margins, reading, 'kill');
    this.wood = stateMargins(margins, reading, 'wood');
    this.mostKill = largestMargins(this.kill);
    this.mostWood = largestMargins(this.wood);
    this.shares = new Float64Array(HORIZON_YEARS * rings.draws);
    this.medians = new Float64Array(rings.draws);
  }

  run(draw: number): void {
    const { rings, years, harm, deaths } = this;
    const { length } = rings;
    this.layOut(draw);
    countDeaths(harm, years, length, deaths);
    let living = length;
    let unseenSpares = 1;
    let median = Infinity;
    for (let a = 0; a < HORIZON_YEARS; a++) {
      living -= deaths[a]!;
      unseenSpares *= 1 - this.unseenPart * rings.unseen[draw]!;
      const share = (living / length) * unseenSpares;
      this.shares[a * rings.draws + draw] = share;
      if (share <= 0.5 && median === Infinity) median = a + 1;
    }
    this.medians[draw] = median;
  }

  range(): LifeRange {
    const { draws } = this.rings;
    const low = new Float64Array(HORIZON_YEARS);
    const high = new Float64Array(HORIZON_YEARS);
    for (let a = 0; a < HORIZON_YEARS; a++) {
      const shares = this.shares.subarray(a * draws, (a + 1) * draws);
      low[a] = quantileType7InPlace(shares, 0.05);
      high[a] = quantileType7InPlace(shares, 0.95);
    }
    const medians = this.medians.slice().sort();
    return {
      low,
      high,
      medianLow: medians[Math.floor(0.05 * (draws - 1))]!,
      medianHigh: medians[Math.ceil(0.95 * (draws - 1))]!,
    };
  }

  private layOut(draw: number): void {
    const { winter, colder, length } = this.rings;
    const { kill, wood } = this.harm;
    for (let i = 0; i < length; i++) {
      const at = draw * length + i;
      const j = winter[at]!;
      const shift = colder ? colder[at]! : 0;
      kill[i] = hitBits(this.kill, this.mostKill, j, shift);
      wood[i] = hitBits(this.wood, this.mostWood, j, shift);
    }
    for (let i = length; i < kill.length; i++) {
      kill[i] = kill[i - length]!;
      wood[i] = wood[i - length]!;
    }
    linkHarm(this.harm);
  }
}

/** States that a winter colder by `shift` hundredths takes the loss from. */
function hitBits(margins: Int16Array, most: Int16Array, winter: number, shift: number): number {
  if (most[winter] === MISSING_HUNDREDTHS || most[winter]! + shift < 0) return 0;
  let bits = 0;
  for (let s = 0; s < TREE_STATES; s++) {
    const margin = margins[winter * TREE_STATES + s]!;
    if (margin !== MISSING_HUNDREDTHS && margin + shift >= 0) bits |= 1 << s;
  }
  return bits;
}
