import fc from 'fast-check';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { byLevel } from '../../../analysis/tree/levels.ts';
import type { LevelGains } from '../../../analysis/tree/level-gains.ts';
import type { MarginQuestion, NightStates } from '../../../analysis/tree/make-margins.ts';
import { CONDITIONS, MATURE_TREE, ROOTSTOCKS } from '../../../analysis/tree/penalties.ts';
import { AGE_CLASS_FROM, READINGS, type TreeInWinter } from '../../../analysis/tree/winter-margins.ts';
import { inventedNights, type InventedNights } from '../place/invented-nights.ts';

/** Nights of an invented station on either half of the globe, cold enough that every level is hit in some winter. */
function station(south: boolean): { nights: KeptNights; winters: InventedNights['members'][0]['winters'] } {
  const site = { lat: south ? -33 : 31, lon: -42, elevationM: 20, coastKm: 10 };
  const { members, nights } = inventedNights({
    seed: 11,
    winters: 12,
    sites: [site],
    gaps: 0.2,
    middleC: -2,
    south,
  });
  return { nights: nights[0], winters: members[0].winters };
}
export const STATIONS = { north: station(false), south: station(true) };

/** Hardening and flush drawn by chance, not by the model: margins must hold for any. */
export function anyStates({ day }: KeptNights, seed: number): NightStates {
  const random = seededRandom(seed);
  return {
    hardening: Float32Array.from(day, () => Math.min(1, 1.2 * random.uniform())),
    flush: Uint8Array.from(day, () => (random.uniform() < 0.1 ? 1 : 0)),
  };
}

/** No night has flush out, all are hardened to the same part. */
export function evenStates({ day }: KeptNights, hardening: number): NightStates {
  return { hardening: new Float32Array(day.length).fill(hardening), flush: new Uint8Array(day.length) };
}

const anyGains = fc.record({
  calmC: fc.double({ min: -2, max: 6, noNaN: true }),
  windyC: fc.double({ min: -2, max: 3, noNaN: true }),
});
export const anyLevelGains: fc.Arbitrary<LevelGains> = fc.record(byLevel(() => anyGains));

export const anyLastingTree = fc.record({
  condition: fc.constantFrom(...CONDITIONS),
  container: fc.boolean(),
  rootstock: fc.constantFrom(...ROOTSTOCKS),
});

export const anyQuestion: fc.Arbitrary<MarginQuestion> = fc.record({
  type: fc.constantFrom(...CITRUS_TYPES),
  tree: anyLastingTree.map((tree) => ({ ...MATURE_TREE, ...tree })),
  gains: anyLevelGains,
  hangsUntil: fc.option(fc.integer({ min: 0, max: 365 })),
  hemisphere: fc.constantFrom('north' as const, 'south' as const),
});

/** Every tree that a winter can meet. */
export const TREES: readonly TreeInWinter[] = READINGS.flatMap((reading) =>
  AGE_CLASS_FROM.flatMap((_, ageClass) => [false, true].map((bearing) => ({ reading, ageClass, bearing }))),
);
