import type { Basis, CitrusType } from './catalogue.ts';

/** Winters without a crop after a loss of leaf, of wood: common practice, no source. */
export const YEARS_TO_BEAR_AGAIN = { leaf: 1, wood: 3 } as const;

/** When a tree first bears. */
export interface Bearing {
  /** Winter since planting whose crop is the first worth counting. */
  readonly firstCropYear: number;
  readonly basis: Basis;
}

/**
 * Of grafted nursery trees planted at one to two years old; trifoliate orange and its hybrids, and the Ichang lemon, as the
 * seedlings they mostly are. None of these figures has a source: `practice` is what nurseries commonly say, `memory` is
 * recalled for the type, `inferred` is taken from its nearest kin.
 */
const FIRST_CROP: Readonly<Record<string, readonly [year: number, basis: Basis]>> = {
  citron: [3, 'practice'],
  mexican_lime: [3, 'practice'],
  tahiti_lime: [3, 'practice'],
  makrut_lime: [3, 'practice'],
  rangpur_lime: [3, 'inferred'],
  eureka_lemon: [3, 'practice'],
  lisbon_lemon: [3, 'practice'],
  meyer_lemon: [2, 'practice'],
  pummelo: [5, 'practice'],
  grapefruit: [4, 'practice'],
  valencia_orange: [4, 'practice'],
  navel_orange: [4, 'practice'],
  hamlin_orange: [3, 'practice'],
  blood_orange: [4, 'practice'],
  sour_orange: [4, 'memory'],
  minneola_tangelo: [4, 'practice'],
  orlando_tangelo: [4, 'practice'],
  temple_tangor: [4, 'inferred'],
  murcott_tangor: [4, 'inferred'],
  clementine: [3, 'practice'],
  dancy_mandarin: [3, 'practice'],
  ponkan_mandarin: [3, 'practice'],
  satsuma_owari: [3, 'practice'],
  satsuma_early: [3, 'practice'],
  changsha_mandarin: [3, 'inferred'],
  calamondin: [2, 'practice'],
  kumquat_nagami: [2, 'practice'],
  kumquat_meiwa: [2, 'practice'],
  limequat: [2, 'inferred'],
  orangequat: [3, 'inferred'],
  sudachi: [3, 'inferred'],
  yuzu: [4, 'memory'],
  ichang_lemon: [6, 'memory'],
  citrange: [5, 'memory'],
  citrumelo: [5, 'memory'],
  trifoliate_orange: [6, 'memory'],
  finger_lime: [3, 'memory'],
};

/** @throws RangeError for a type without a figure. */
export function bearingOf({ id }: Pick<CitrusType, 'id'>): Bearing {
  const figure = FIRST_CROP[id];
  if (!figure) throw new RangeError(`There is no first crop year for "${id}".`);
  const [firstCropYear, basis] = figure;
  return { firstCropYear, basis };
}
