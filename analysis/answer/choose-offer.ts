import { sayFigureText } from '../language/figures.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { HarvestWindow } from '../tree/harvest.ts';
import type { Way } from './choosing.ts';

/**
 * What became of a winter's crop on a mature tree, in {@link Offer.cropsByWinter}; `lost`: nothing to pick, the fruit taken
 * while it hung or none carried after a loss of leaf or wood in the winters before.
 */
export const CROP = { kept: 0, lost: 1, unknown: 2 } as const;

/** What a type gives grown one way at a place. `null`: not known, as where no winter is complete. */
export interface Offer {
  /**
   * Nights a winter, on average, on which a cover would go on over a mature tree to save its leaves, or the crop while it
   * hangs; the same for every cover on a spot, since it is the bare tree's danger that calls for it. 0 where nothing is put on.
   */
  readonly nightsToCover: number | null;
  /** Of ten winters in which a living tree is old enough to bear, those without a crop, taken or not carried after a loss. */
  readonly lostCropsInTen: number | null;
  /** Winter since planting whose crop is the first; neither spot nor cover changes it. */
  readonly firstCropYear: number;
  /** Trees of ten that see their tenth year, hardening counted night by night: the colder reading. */
  readonly livingInTen: number | null;
  /** Low end of its range, read only of what is told in the end: it may be a getter that works it out then. */
  readonly livingInTenLow: number | null;
  /** One entry of {@link CROP} a winter, the same winters for every type. */
  readonly cropsByWinter: Uint8Array;
  readonly harvest: HarvestWindow;
}

/** What a type offers grown one way: made by the life engine, or by hand in tests. */
export type OfferOf = (type: CitrusType, way: Way) => Offer;

/**
 * A count to the tenth, as it is told and judged, so that a rule never reads "2.0, you can bear 2" and fails. What is above
 * 0 is never told as none, what is below 10 never as all.
 */
export function toldTenths(count: number): number {
  const rounded = Math.round(count * 10) / 10;
  if (rounded === 0 && count > 0) return 0.1;
  return rounded === 10 && count < 10 ? 9.9 : rounded;
}

/** A told count in figures: `2`, `2.1`. */
export function tenthsText(told: number): string {
  return sayFigureText(String(Math.round(told * 10) / 10));
}
