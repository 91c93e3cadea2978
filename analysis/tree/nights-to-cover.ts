import type { KeptNights } from '../records/kept-nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { toHundredths } from '../units/temperature.ts';
import { AirAtTree } from './air-at-tree.ts';
import type { LevelGains } from './level-gains.ts';
import type { MarginQuestion } from './make-margins.ts';
import { TreeLimits } from './tree-limits.ts';
import { AGE_CLASS_FROM } from './winter-margins.ts';
import { winterSpans } from './winter-spans.ts';

export interface NightsToCoverQuestion extends Pick<MarginQuestion, 'type' | 'tree' | 'hemisphere'> {
  /** Gains without the cover. */
  readonly spotGains: LevelGains;
  /** How near the limit a night must come to be covered, because forecasts err: see `ACTION_MARGIN_C`. */
  readonly withinC: number;
  /** Hardening on each night for the colder reading; without it every tree is hardened. */
  readonly hardening?: Float32Array;
}

/**
 * Nights a winter on which a cover would go on to save the leaves: entry `winter * ages + ageClass`, incomplete winters too.
 * The load of a crop isn't counted: who covers knows the type and how old the tree is.
 * @throws RangeError for a type whose hours aren't kept
 */
export function nightsToCover(
  nights: KeptNights,
  winters: Pick<WinterTable, 'winter'>,
  { type, tree, spotGains, withinC, hardening, hemisphere }: NightsToCoverQuestion,
): Int16Array {
  const { hours, centreC } = type.thresholds.leaf;
  const air = new AirAtTree(nights, hours, spotGains.leaf);
  const limits = new TreeLimits(type, tree);
  const within = toHundredths(withinC);
  const byAge = Int32Array.from(limits.agesC, (ageC) => limits.limit(centreC, ageC, false) + within);
  const soft = (i: number): number =>
    limits.limit(centreC, hardening ? limits.notHardenedC * (1 - hardening[i]) : 0, false) + within;
  const { from, to } = winterSpans(nights, winters, null, hemisphere);
  const ages = AGE_CLASS_FROM.length;
  const counts = new Int16Array(from.length * ages);
  for (let w = 0; w < from.length; w++) {
    for (let i = from[w]; i < to[w]; i++) {
      const cold = air.at(i);
      const softHit = hardening !== undefined && cold <= soft(i);
      for (let age = 0; age < ages; age++) {
        if (softHit || cold <= byAge[age]) counts[w * ages + age]++;
      }
    }
  }
  return counts;
}
