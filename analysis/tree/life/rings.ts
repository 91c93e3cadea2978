import { circularBlocks } from '../../extremes/block-resample.ts';
import type { InterpolationError } from '../../extremes/interpolation-error.ts';
import { quantileType7 } from '../../math/quantile.ts';
import { normalQuantile } from '../../math/normal.ts';
import type { SeededRandom } from '../../math/seeded-random.ts';

/** Draws behind every range of a life. */
export const RING_DRAWS = 200;
/** Winters kept in a row, so that bad winters that came together stay together; how it was chosen: `README.md`. */
export const BLOCK_WINTERS = 4;

/** The same winters put in new order, again and again: shared by all types and readings of a place. */
export interface Rings {
  readonly draws: number;
  /** Winters in a ring: as many as are complete. */
  readonly length: number;
  /** Position in the margins of each winter of each ring. */
  readonly winter: Int16Array;
  /** Hundredths of °C by which it was colder than the place's history says; `null` at a station. */
  readonly colder: Int16Array | null;
  /** Chance, by draw, of a winter that takes any tree and that the record doesn't show. */
  readonly unseen: Float64Array;
  /** Its 95 % point: as often as the record's length alone allows. */
  readonly unseenAtMost: number;
}

export interface RingsQuestion {
  readonly complete: Uint8Array;
  readonly random: SeededRandom;
  readonly draws?: number;
  readonly block?: number;
  /** For a place without a station: how far its winters may be off, and their coldest values by position, °C. */
  readonly place?: { readonly error: InterpolationError; readonly coldestC: ArrayLike<number> } | null;
}

/**
 * Each draw: a ring of the complete winters in circular blocks; one error of the place's mean and one of its scale, shared by
 * all winters of the ring; a chance of an unseen winter from Jeffreys' posterior of 0 in n, Beta(1/2, n + 1/2), evenly
 * spread over its quantiles, so that 200 draws are enough.
 * @throws RangeError when no winter is complete.
 */
export function makeRings({ complete, random, place = null, ...q }: RingsQuestion): Rings {
  const draws = q.draws ?? RING_DRAWS;
  const positions = Array.from(complete.keys()).filter((j) => complete[j] === 1);
  const length = positions.length;
  if (length === 0) throw new RangeError('A ring needs at least 1 complete winter, got 0.');
  const block = Math.min(q.block ?? BLOCK_WINTERS, length);
  const winter = new Int16Array(draws * length);
  const colder = place && new Int16Array(draws * length);
  const unseen = new Float64Array(draws);
  const order = shuffled(draws, random);
  const ring = new Int16Array(length);
  for (let b = 0; b < draws; b++) {
    circularBlocks(length, block, random, ring);
    for (let i = 0; i < length; i++) winter[b * length + i] = positions[ring[i]!]!;
    unseen[b] = chanceOfNoneIn(length, (order[b]! + random.uniform()) / draws, random);
    if (place && colder) {
      const { meanC, meanErrorC, logScaleError, correlation = 0 } = place.error;
      const warmer = random.normal();
      const wider = correlation * warmer + Math.sqrt(1 - correlation ** 2) * random.normal();
      const stretch = Math.exp(logScaleError * wider) - 1;
      for (let i = b * length; i < (b + 1) * length; i++) {
        const anomalyC = place.coldestC[winter[i]!]! - meanC;
        // A complete winter without a cold night has no anomaly: only the mean's error moves it.
        const stretchedC = Number.isNaN(anomalyC) ? 0 : stretch * anomalyC;
        colder[i] = Math.round(-100 * (meanErrorC * warmer + stretchedC));
      }
    }
  }
  return {
    draws,
    length,
    winter,
    colder,
    unseen,
    unseenAtMost: length > 0 ? quantileType7(unseen, 0.95) : 1,
  };
}

/** A draw of Beta(1/2, n + 1/2) from two gamma variables; the first, half the square of a normal, at its quantile `p`. */
function chanceOfNoneIn(n: number, p: number, random: SeededRandom): number {
  const hit = normalQuantile((1 + p) / 2) ** 2 / 2;
  let none = random.normal() ** 2 / 2;
  for (let i = 0; i < n; i++) none -= Math.log(random.uniform());
  return hit / (hit + none);
}

function shuffled(count: number, random: SeededRandom): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = random.index(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
