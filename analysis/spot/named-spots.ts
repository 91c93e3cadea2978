import { t } from '../language/t.ts';
import type { Basis } from '../tree/catalogue.ts';
import { spreadOfF, type GainSpread, type SpreadF } from '../winter/gain-spread.ts';

/** A kind of spot that needs no drawing: degrees against the open station at tree height, °C. */
export interface NamedSpot {
  /** Letters and hyphens; stands in the address and after `--spot`. */
  readonly id: string;
  readonly name: string;
  readonly gain: GainSpread;
  readonly basis: Basis;
  /** Keys of `sourceOf` in the tree room. */
  readonly sources: readonly string[];
  /** What the spot is like, and how well its figures are known; one or two plain sentences. */
  readonly about: string;
}

/**
 * The kinds of spot of the handbook's table, the open one first. Figures in °F as in the sources. Town, suburb and sea
 * shore are left out: the place history holds them already.
 */
export const NAMED_SPOTS: readonly NamedSpot[] = [
  spot(
    'open',
    t`Open lawn, flat`,
    [0, 0, 0],
    [0, 0, 0],
    'found',
    [],
    t`What everything else is measured against.`,
  ),
  spot(
    'south-wall-heated',
    t`Sun-facing masonry wall of a heated house`,
    [3, 4.5, 6],
    [1, 1.5, 2],
    'practice',
    ['practice', 'S14'],
    t`Within 1 to 2 m (3 to 7 ft) of a wall that faces west or the side of the midday sun. Satsumas kept by a tall brick wall are told of; the degrees are common practice.`,
  ),
  spot(
    'heated-wall',
    t`Any wall of a heated house`,
    [2, 3, 4],
    [1, 1.5, 2],
    'practice',
    ['practice'],
    t`Within 1 to 2 m (3 to 7 ft) of the wall, on any side. Common practice, no source.`,
  ),
  spot(
    'out-of-wind',
    t`Sunny side, out of the cold wind`,
    [1, 1.5, 2],
    [1, 2, 3],
    'practice',
    ['practice'],
    t`Behind a wall, building or evergreen windbreak on the side the coldest wind comes from. Common practice, no source.`,
  ),
  spot(
    'under-canopy',
    t`Under an evergreen canopy or overhang`,
    [2, 3.5, 5],
    [0, 0.5, 1],
    'practice',
    ['S28', 'S31', 'practice'],
    t`Often free of frost, but not of freezes. The effect was found, the degrees are common practice.`,
  ),
  spot(
    'paving-edge',
    t`Edge of a paved court or driveway`,
    [1, 2, 3],
    [0, 0.5, 1],
    'practice',
    ['M15', 'practice'],
    t`The effect is from a textbook recalled, the degrees are common practice.`,
  ),
  spot(
    'bare-ground',
    t`Bare, moist, firm soil`,
    [0.2, 1, 1.8],
    [0, 0, 0],
    'inferred',
    ['S25', 'S28'],
    t`Found to be 2 to 3.6 °F (1.1 to 2 °C) warmer than tall grass; short lawn, the measure here, is 1.8 °F (1 °C) warmer than tall grass.`,
  ),
  spot(
    'mulch-grass',
    t`Thick mulch or tall grass`,
    [-2, -1.5, -1],
    [0, 0, 0],
    'found',
    ['S24'],
    t`The ground gives less of its warmth to the air.`,
  ),
  spot(
    'low-spot',
    t`Low spot where cold air stands`,
    [-8, -5.5, -3],
    [0, 0, 0],
    'practice',
    ['S34', 'S36', 'practice'],
    t`Cold air was found to collect in hollows only 6 m deep; the degrees are common practice.`,
  ),
  spot(
    'mid-slope',
    t`Middle or upper part of an open slope`,
    [2, 3.5, 5],
    [-1, -0.5, 0],
    'practice',
    ['S31', 'practice'],
    t`Cold air drains away on calm nights; slopes that face the wind are coldest in windy freezes. Effect found, degrees practice.`,
  ),
  spot(
    'crest',
    t`Crest of a hill`,
    [1, 2.5, 4],
    [-2, -1.5, -1],
    'practice',
    ['S31', 'practice'],
    t`Mild on calm nights, open to the wind in a windy freeze. Effect found, degrees practice.`,
  ),
  spot(
    'lake-shore',
    t`Shore of a big lake that the cold wind crosses`,
    [2, 3.5, 5],
    [2, 3, 4],
    'memory',
    ['S27'],
    t`Within 500 m of the water. The effect was found, the degrees are recalled from lake studies. Not where the station itself lies on that shore.`,
  ),
  spot(
    'pond',
    t`Beside a pond`,
    [0, 0.5, 1],
    [0, 0, 0],
    'memory',
    ['M15'],
    t`A pond under 1 hectare does little.`,
  ),
];

const BY_ID = new Map(NAMED_SPOTS.map((named) => [named.id, named]));

/** A named spot by its id, `undefined` when there is none. */
export function findNamedSpot(id: string): NamedSpot | undefined {
  return BY_ID.get(id);
}

function spot(
  id: string,
  name: string,
  calmF: SpreadF,
  windyF: SpreadF,
  basis: Basis,
  sources: readonly string[],
  about: string,
): NamedSpot {
  return { id, name, gain: { calm: spreadOfF(calmF), windy: spreadOfF(windyF) }, basis, sources, about };
}
