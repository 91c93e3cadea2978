import { ACTION_MARGIN_C } from '../cover/cover-nights.ts';
import { quantileType7 } from '../math/quantile.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import { hangsUntil, harvestWindow } from '../tree/harvest.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import { coverIndex, nightsToCover } from '../tree/nights-to-cover.ts';
import type { TreeState } from '../tree/penalties.ts';
import { AGE_CLASS_FROM, ageClassOf } from '../tree/winter-margins.ts';
import { hemisphereOf } from '../winter/winter-year.ts';
import { centreOf, type GrownTrees, type LifePlace } from './life-place.ts';

/** Share of the winters that have no more nights than a hard one. */
const HARD_WINTER = 0.9;

/** Nights a winter on which something must be done, over the complete winters. */
export interface NightsAWinter {
  readonly mean: number;
  readonly median: number;
  /** One winter in ten has more. */
  readonly hard: number;
  readonly most: { readonly winter: number; readonly nights: number };
  readonly winters: number;
}

/** Nights of one type, by {@link nightsIndex}: on which a cover goes on in the ground, on which a pot comes in. */
export interface TypeNights {
  readonly ground: readonly NightsAWinter[];
  readonly pot: readonly NightsAWinter[];
}

/** By a type's id; a place without a complete winter has none. */
export type AdviceNights = Readonly<Record<string, TypeNights>>;

/** Where in {@link TypeNights} a tree's nights are: by its age, and with a crop to save as well or the leaves alone. */
export function nightsIndex({ ageYears, fruitLoad }: Pick<TreeState, 'ageYears' | 'fruitLoad'>): number {
  return 2 * ageClassOf(ageYears) + (fruitLoad ? 1 : 0);
}

/**
 * Nights to cover and to bring a pot in, for every type, age and load: those on which the leaves (or a crop that hangs) come
 * within 2 °F of their limit on the bare spot, hardening counted night by night, the colder reading. In a pot the roots are as
 * cold as the air, so that its limit is warmer.
 */
export function adviceNights(
  place: LifePlace,
  types: readonly CitrusType[],
  { tree, spotGains, planting }: Pick<GrownTrees, 'tree' | 'spotGains' | 'planting'>,
): AdviceNights {
  const { subject, nights, state } = place;
  if (!subject.winters.complete.includes(1)) return {};
  const hemisphere = hemisphereOf(subject.place.lat);
  const spot = centreOf(spotGains as LevelGainSpreads);
  const counted = (type: CitrusType, container: boolean): readonly NightsAWinter[] => {
    const counts = nightsToCover(nights, subject.winters, {
      type,
      tree: { ...tree, container },
      spotGains: spot,
      hangsUntil: hangsUntil(harvestWindow(type, planting.calendar, hemisphere), planting.picking),
      withinC: ACTION_MARGIN_C,
      hardening: state.hardening,
      hemisphere,
    });
    return AGE_CLASS_FROM.flatMap((_, ageClass) =>
      [false, true].map((bearing) =>
        overWinters(subject.winters, (w) => counts[coverIndex(w, ageClass, bearing)]),
      ),
    );
  };
  return Object.fromEntries(
    types.map((type) => [type.id, { ground: counted(type, false), pot: counted(type, true) }]),
  );
}

function overWinters(
  { winter, complete }: { readonly winter: Int16Array; readonly complete: Uint8Array },
  nightsOf: (w: number) => number,
): NightsAWinter {
  const counted = [...winter.keys()]
    .filter((w) => complete[w])
    .map((w) => ({ winter: winter[w], nights: nightsOf(w) }));
  const ascending = Float64Array.from(counted, ({ nights }) => nights).sort();
  return {
    mean: ascending.reduce((sum, nights) => sum + nights, 0) / ascending.length,
    median: quantileType7(ascending, 0.5),
    hard: quantileType7(ascending, HARD_WINTER),
    most: counted.reduce((most, one) => (one.nights > most.nights ? one : most)),
    winters: ascending.length,
  };
}
