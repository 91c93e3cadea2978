import { seededRandom, type SeededRandom } from '../math/seeded-random.ts';

/**
 * The random part of {@link drawGev}, which is the same for every fit of as many values with the same seed: all durations
 * and gains of a place, and most places of a pack. Logarithms are half the work of a draw, so they are kept too.
 */
export interface DrawStream {
  readonly draws: number;
  /** Values of a sample. */
  readonly count: number;
  /** One standard normal a draw. */
  readonly normals: Float64Array;
  /** Of each draw, the logarithms of `count` standard exponentials in ascending order. */
  readonly logExponentials: Float64Array;
  /** The generator as the draws left it, for what comes after them: a copy of its own at each call. */
  after(): SeededRandom;
}

/** Streams kept, and the largest that is: a batch goes through places with a few lengths of record in turn. */
const MOST_KEPT = 12;
const LARGEST_KEPT = 200_000;

const kept = new Map<string, DrawStream>();

/** The stream for `draws` samples of `count` values, from {@link seededRandom} of the seed. */
export function drawStream(seed: number, draws: number, count: number): DrawStream {
  const key = `${seed} ${draws} ${count}`;
  const stream = kept.get(key) ?? makeStream(seed, draws, count);
  kept.delete(key);
  if (draws * count <= LARGEST_KEPT) kept.set(key, stream);
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
  return stream;
}

/** Exponentials come out already in order, as sums of spacings (Renyi 1953), so nothing is sorted. */
function makeStream(seed: number, draws: number, count: number): DrawStream {
  const random = seededRandom(seed);
  const normals = new Float64Array(draws);
  const logExponentials = new Float64Array(draws * count);
  for (let b = 0, at = 0; b < draws; b++) {
    normals[b] = random.normal();
    let exponential = 0;
    for (let i = 0; i < count; i++) {
      exponential -= Math.log(random.uniform()) / (count - i);
      logExponentials[at++] = Math.log(exponential);
    }
  }
  return { draws, count, normals, logExponentials, after: () => random.copy() };
}
