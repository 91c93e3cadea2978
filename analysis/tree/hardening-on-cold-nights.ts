import type { KeptNights } from '../records/kept-nights.ts';
import { AirAtTree } from './air-at-tree.ts';
import type { MarginQuestion, NightStates } from './make-margins.ts';
import { TreeLimits } from './tree-limits.ts';

/** Nights this close above the limit count as cold, hundredths of °C. */
const NEAR = 200;

/**
 * Mean hardening (0-1) on the nights that took the leaves of the mature, hardened tree or came within 2 °C of it; `null`:
 * there was none. All nights given count, also of incomplete winters.
 * @throws RangeError for a type whose hours aren't kept
 */
export function meanHardeningOnColdNights(
  nights: KeptNights,
  { hardening }: Pick<NightStates, 'hardening'>,
  { type, tree, gains }: Pick<MarginQuestion, 'type' | 'tree' | 'gains'>,
): number | null {
  const { hours, centreC } = type.thresholds.leaf;
  const air = new AirAtTree(nights, hours, gains.leaf);
  const near = new TreeLimits(type, tree).limit(centreC, 0, false) + NEAR;
  let [sum, count] = [0, 0];
  for (let i = 0; i < hardening.length; i++) {
    if (air.at(i) > near) continue;
    sum += hardening[i];
    count++;
  }
  return count === 0 ? null : sum / count;
}
