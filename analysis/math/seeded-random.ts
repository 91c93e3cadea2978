import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of random numbers that is the same for the same seed in Node and in every browser. */
export interface SeededRandom {
  /** A double in (0, 1): multiples of 2^-53, never 0. */
  uniform(): number;
  /** A whole number in 0 to `count - 1`. */
  index(count: number): number;
  /** A standard normal number. */
  normal(): number;
  /** A stream that goes on from here as this one does, each without regard to the other. */
  copy(): SeededRandom;
}

/**
 * Starts a stream (xoroshiro128+ of `pure-rand`). The generator's state is filled from the seed by {@link scramble}: its
 * own way of taking a small seed makes the first numbers of every stream alike (the very first lies within 1e-6 of 1).
 * @param seed any number; its lower 32 bits count.
 */
export function seededRandom(seed: number): SeededRandom {
  return streamFrom(xoroshiro128plusFromState([1, 2, 3, 4].map((i) => scramble(seed + i * 0x9e3779b9))), NaN);
}

/** @param spare the second of two normals made at once, NaN for none */
function streamFrom(generator: ReturnType<typeof xoroshiro128plusFromState>, spare: number): SeededRandom {
  const uniform = (): number => {
    let u = uniformFloat64(generator);
    while (u === 0) u = uniformFloat64(generator);
    return u;
  };
  return {
    uniform,
    index: (count) => Math.floor(uniform() * count),
    normal() {
      if (!Number.isNaN(spare)) {
        const kept = spare;
        spare = NaN;
        return kept;
      }
      // Marsaglia's polar method: two normals from a point in the unit disc.
      for (;;) {
        const x = 2 * uniform() - 1;
        const y = 2 * uniform() - 1;
        const r = x * x + y * y;
        if (r >= 1 || r === 0) continue;
        const scale = Math.sqrt((-2 * Math.log(r)) / r);
        spare = y * scale;
        return x * scale;
      }
    },
    copy: () => streamFrom(generator.clone(), spare),
  };
}

/** Spreads 32 bits so that each bit of the input moves about half of those of the output (final steps of MurmurHash3). */
function scramble(bits: number): number {
  let h = bits | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
