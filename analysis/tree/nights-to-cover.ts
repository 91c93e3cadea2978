import type { KeptNights } from '../records/kept-nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { toHundredths } from '../units/temperature.ts';
import { AirAtTree } from './air-at-tree.ts';
import type { LevelGains } from './level-gains.ts';
import type { MarginQuestion } from './make-margins.ts';
import { TreeLimits } from './tree-limits.ts';
import { AGE_CLASS_FROM } from './winter-margins.ts';
import { winterSpans } from './winter-spans.ts';

const AGES = AGE_CLASS_FROM.length;

/** Where {@link nightsToCover} has the nights of a winter for a tree of an age class, with a crop or without. */
export function coverIndex(winter: number, ageClass: number, bearing: boolean): number {
  return (winter * AGES + ageClass) * 2 + (bearing ? 1 : 0);
}

export interface NightsToCoverQuestion extends Pick<
  MarginQuestion,
  'type' | 'tree' | 'hangsUntil' | 'hemisphere'
> {
  /** Gains without the cover. */
  readonly spotGains: LevelGains;
  /** How near the limit a night must come to be covered, because forecasts err: see `ACTION_MARGIN_C`. */
  readonly withinC: number;
  /** Hardening on each night for the colder reading; without it every tree is hardened. */
  readonly hardening?: Float32Array;
}

/**
 * Nights a winter on which a cover would go on to save the leaves, and while a crop hangs the fruit: by {@link coverIndex},
 * incomplete winters too. The load of a crop isn't counted at the leaves, whose limit lies far below the fruit's.
 * @throws RangeError for a type whose hours aren't kept
 */
export function nightsToCover(
  nights: KeptNights,
  winters: Pick<WinterTable, 'winter'>,
  { type, tree, spotGains, withinC, hardening, hangsUntil, hemisphere }: NightsToCoverQuestion,
): Int16Array {
  const { leaf, fruit } = type.thresholds;
  const leafAir = new AirAtTree(nights, leaf.hours, spotGains.leaf);
  const fruitAir = new AirAtTree(nights, fruit.hours, spotGains.fruit);
  const limits = new TreeLimits(type, tree);
  const within = toHundredths(withinC);
  const fruitLimit = toHundredths(fruit.centreC) + within;
  const byAge = Int32Array.from(limits.agesC, (ageC) => limits.limit(leaf.centreC, ageC, false) + within);
  const soft = (i: number): number =>
    limits.limit(leaf.centreC, hardening ? limits.notHardenedC * (1 - hardening[i]) : 0, false) + within;
  const { from, picked, to } = winterSpans(nights, winters, hangsUntil, hemisphere);
  const counts = new Int16Array(from.length * AGES * 2);
  for (let w = 0; w < from.length; w++) {
    for (let i = from[w]; i < to[w]; i++) {
      const cold = leafAir.at(i);
      const softHit = hardening !== undefined && cold <= soft(i);
      const fruitHit = i < picked[w] && fruitAir.at(i) <= fruitLimit;
      for (let age = 0; age < AGES; age++) {
        const leafHit = softHit || cold <= byAge[age];
        if (leafHit) counts[coverIndex(w, age, false)]++;
        if (leafHit || fruitHit) counts[coverIndex(w, age, true)]++;
      }
    }
  }
  return counts;
}
