import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A seeded source of random numbers; the same seed and name always give the same sequence. */
export interface RandomStream {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
  /** Exponential with mean 1. */
  exponential(): number;
}

/** One stream of the seed for each name, so that a new user of random numbers leaves all other streams unchanged. */
export function randomStream(seed: number, name: string): RandomStream {
  const generator = xoroshiro128plus(nameHash(name, seed));
  let spare = NaN;
  const uniform = () => uniformFloat64(generator);
  return {
    uniform,
    normal() {
      if (!Number.isNaN(spare)) {
        const kept = spare;
        spare = NaN;
        return kept;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
    exponential: () => -Math.log(1 - uniform()),
  };
}

/** FNV-1a of the name, started from the seed: a whole number of 32 bits. */
function nameHash(name: string, seed: number): number {
  let hash = (0x811c9dc5 ^ seed) | 0;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash | 0;
}
