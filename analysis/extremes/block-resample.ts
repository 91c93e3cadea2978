import type { SeededRandom } from '../math/seeded-random.ts';

/**
 * Circular block bootstrap (Politis and Romano 1992): as many positions as the series is long, in blocks of
 * neighbours whose starts are drawn from all positions alike; after the last position comes the first, so each is as likely
 * as any other. The last block is cut where the series is full.
 * @param length of the series, at least 1
 * @param block neighbours kept together, 1 (plain bootstrap) to `length`
 * @param out filled and returned; its length decides how many positions are drawn
 * @throws RangeError when `block` is outside 1 to `length`.
 */
export function circularBlocks(
  length: number,
  block: number,
  random: SeededRandom,
  out: Int16Array = new Int16Array(length),
): Int16Array {
  if (!(block >= 1 && block <= length)) {
    throw new RangeError(`A block must have 1 to ${length} winters, not ${block}.`);
  }
  for (let from = 0; from < out.length; from += block) {
    const start = random.index(length);
    for (let i = from; i < Math.min(from + block, out.length); i++) out[i] = (start + i - from) % length;
  }
  return out;
}
