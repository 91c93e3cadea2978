import { t } from '../language/t.ts';
import type { Basis } from '../tree/catalogue.ts';
import { spreadOfF, type GainSpread, type Spread, type SpreadF } from '../winter/gain-spread.ts';
import { MECHANISM_IDS, type MechanismId } from './mechanism.ts';
import type { Yard } from './yard.ts';

/**
 * What a mechanism adds to the air at its full effect, against the open station over short lawn, at about 1 m, °C.
 * `gain` is the table's, or the reader's own where `own` is set.
 */
export interface Coefficient {
  readonly id: MechanismId;
  readonly name: string;
  /** What "full effect" means for it, one plain sentence. */
  readonly fullEffect: string;
  readonly gain: GainSpread;
  readonly basis: Basis;
  /** Keys of `sourceOf` in the tree room. */
  readonly sources: readonly string[];
  /** Whether the reader put own degrees in place of the table's. */
  readonly own: boolean;
}

export type Coefficients = Readonly<Record<MechanismId, Coefficient>>;

type Row = Omit<Coefficient, 'id' | 'gain' | 'own'> & { readonly calmF: SpreadF; readonly windyF: SpreadF };

const NO_F: SpreadF = [0, 0, 0];

/**
 * The table, °F as in the sources. "South or west masonry wall of a heated house" is +3 to +6 on calm and +1 to +2 on
 * windy nights, "any wall of a heated house" +2 to +4 and +1 to +2: the difference of the two is the sun's stored warmth.
 */
const TABLE: Readonly<Record<MechanismId, Row>> = {
  'warm-wall': {
    name: t`Sun-warmed masonry`,
    fullEffect: t`Within 1.5 m of a masonry wall at least 2.4 m high that faces west or the side of the midday sun.`,
    calmF: [1, 1.5, 2],
    windyF: NO_F,
    basis: 'inferred',
    sources: ['practice', 'S14'],
  },
  'heated-wall': {
    name: t`Wall of a heated building`,
    fullEffect: t`Within 1.5 m of any wall, at least 2.4 m high, of a heated building.`,
    calmF: [2, 3, 4],
    windyF: [1, 1.5, 2],
    basis: 'practice',
    sources: ['practice'],
  },
  'wind-shelter': {
    name: t`Shelter from the cold wind`,
    fullEffect: t`Within five heights downwind of a closed wall, building or windbreak at least 2 m high.`,
    calmF: NO_F,
    windyF: [1, 2, 3],
    basis: 'practice',
    sources: ['practice'],
  },
  'sky-hidden': {
    name: t`Sky hidden`,
    fullEffect: t`Under a closed evergreen canopy or a roof: three quarters of the sky hidden or more.`,
    calmF: [2, 3.5, 5],
    windyF: [0, 0.5, 1],
    basis: 'practice',
    sources: ['S28', 'S31', 'practice'],
  },
  paving: {
    name: t`Paving`,
    fullEffect: t`On or within 1 m of a paved court of 12 square metres or more.`,
    calmF: [1, 2, 3],
    windyF: [0, 0.5, 1],
    basis: 'practice',
    sources: ['M15', 'practice'],
  },
  'bare-ground': {
    name: t`Bare, moist, firm soil`,
    fullEffect: t`On bare ground of 9 square metres or more, against short lawn.`,
    calmF: [0.2, 1, 1.8],
    windyF: NO_F,
    basis: 'inferred',
    sources: ['S25', 'S28'],
  },
  'mulch-or-tall-grass': {
    name: t`Mulch or tall grass`,
    fullEffect: t`On mulch or tall grass of 9 square metres or more, against short lawn.`,
    calmF: [-2, -1.5, -1],
    windyF: NO_F,
    basis: 'found',
    sources: ['S24'],
  },
  pond: {
    name: t`Pond or pool`,
    fullEffect: t`Within 1 m of a pond or pool of 20 square metres or more.`,
    calmF: [0, 0.5, 1],
    windyF: NO_F,
    basis: 'memory',
    sources: ['M15'],
  },
  'big-water': {
    name: t`Big lake`,
    fullEffect: t`Within 500 m of a big lake that the cold wind crosses.`,
    calmF: [2, 3.5, 5],
    windyF: [2, 3, 4],
    basis: 'memory',
    sources: ['S27'],
  },
  'cold-air': {
    name: t`Cold air that collects`,
    fullEffect: t`In a low spot 9.2 m below the open ground or deeper; a shallower one in proportion.`,
    calmF: [-8, -5.5, -3],
    windyF: NO_F,
    basis: 'memory',
    sources: ['S34', 'S36', 'M15', 'practice'],
  },
  slope: {
    name: t`Middle of a slope`,
    fullEffect: t`In the middle of a hillside that falls 5 m in 100 m or more; cold wind on the slope.`,
    calmF: [2, 3.5, 5],
    windyF: [-1, -0.5, 0],
    basis: 'practice',
    sources: ['S31', 'practice'],
  },
};

/** The sea and the crest of a hill have rows of their own. */
const SEA: Row = {
  name: t`Sea or bay`,
  fullEffect: t`Within 1 km of the sea or a bay that the cold wind crosses.`,
  calmF: [4, 6, 8],
  windyF: [2, 3.5, 5],
  basis: 'practice',
  sources: ['practice'],
};
const CREST: Row = {
  ...TABLE.slope,
  name: t`Crest of a hill`,
  fullEffect: t`On the crest of a hill whose sides fall 5 m in 100 m or more.`,
  calmF: [1, 2.5, 4],
  windyF: [-2, -1.5, -1],
};

/**
 * The coefficients that hold in a yard. The reader's own degrees become the centre; the low and high end then lie half as
 * far from it as the table's do.
 */
export function coefficientsOf(yard: Pick<Yard, 'own' | 'slope' | 'bigWater'>): Coefficients {
  return Object.fromEntries(
    MECHANISM_IDS.map((id) => {
      const { calmF, windyF, ...row } = rowOf(id, yard);
      const own = yard.own[id];
      const gain: GainSpread = {
        calm: around(spreadOfF(calmF), own?.calmC),
        windy: around(spreadOfF(windyF), own?.windyC),
      };
      return [id, { id, ...row, gain, own: own !== undefined } satisfies Coefficient];
    }),
  ) as Record<MechanismId, Coefficient>;
}

/** The table alone, for a yard with a lake and the middle of a slope. */
export const TABLE_COEFFICIENTS: Coefficients = coefficientsOf({ own: {}, slope: null, bigWater: null });

function rowOf(id: MechanismId, { slope, bigWater }: Pick<Yard, 'slope' | 'bigWater'>): Row {
  if (id === 'slope' && slope?.position === 'crest') return CREST;
  if (id === 'big-water' && bigWater?.kind === 'sea') return SEA;
  return TABLE[id];
}

function around(table: Spread, ownC: number | undefined): Spread {
  if (ownC === undefined) return table;
  return {
    lowC: ownC - (table.centreC - table.lowC) / 2,
    centreC: ownC,
    highC: ownC + (table.highC - table.centreC) / 2,
  };
}
