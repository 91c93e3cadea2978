import { distanceToSides, isWithin, outlinesOf, type Outlines } from '../segments.ts';
import type { Yard, YardThing } from '../yard.ts';

/** How an area on the ground reaches beyond its edge; all design choices, no source. */
interface Reach {
  /** Smaller areas do less, in proportion. */
  readonly fullAreaM2: number;
  readonly fullWithinM: number;
  /** Distance over which the effect then falls to 37 %. */
  readonly decayM: number;
}

export interface Areas {
  readonly outlines: Outlines;
  readonly reach: Reach;
}

export interface YardAreas {
  readonly paving: Areas;
  readonly bare: Areas;
  readonly covered: Areas;
  readonly ponds: Areas;
}

const PAVING: Reach = { fullAreaM2: 12, fullWithinM: 1, decayM: 2 };
const GROUND: Reach = { fullAreaM2: 9, fullWithinM: 0, decayM: 1.5 };
const POND: Reach = { fullAreaM2: 20, fullWithinM: 1, decayM: 5 };

/** Paving, bare ground, covered ground and ponds of a yard. */
export function yardAreas({ things }: Pick<Yard, 'things'>): YardAreas {
  const areas = (reach: Reach, belongs: (thing: YardThing) => boolean): Areas => ({
    reach,
    outlines: outlinesOf(
      things.flatMap((thing) => ('outline' in thing && belongs(thing) ? [thing.outline] : [])),
    ),
  });
  return {
    paving: areas(PAVING, ({ kind }) => kind === 'paving'),
    bare: areas(GROUND, (thing) => thing.kind === 'ground' && thing.cover === 'bare'),
    covered: areas(GROUND, (thing) => thing.kind === 'ground' && thing.cover !== 'bare'),
    ponds: areas(POND, ({ kind }) => kind === 'water'),
  };
}

/** Distance, m, to the nearest of the outlines, 0 within one; Infinity without any. */
export function distanceToOutlines({ segments, first }: Outlines, eastM: number, northM: number): number {
  let nearest = Infinity;
  for (let k = 0; k + 1 < first.length; k++) {
    if (isWithin(segments, eastM, northM, first[k], first[k + 1])) return 0;
    nearest = Math.min(nearest, distanceToSides(segments, eastM, northM, first[k], first[k + 1]));
  }
  return nearest;
}

/** Share of the full effect at a point, 0-1: of the area that gives most of it. */
export function areaShare({ outlines, reach }: Areas, eastM: number, northM: number): number {
  const { segments, first, areaM2 } = outlines;
  let most = 0;
  for (let k = 0; k < areaM2.length; k++) {
    const size = Math.min(1, areaM2[k] / reach.fullAreaM2);
    if (size <= most) continue;
    const distanceM = isWithin(segments, eastM, northM, first[k], first[k + 1])
      ? 0
      : distanceToSides(segments, eastM, northM, first[k], first[k + 1]);
    const share =
      distanceM <= reach.fullWithinM ? size : size * Math.exp((reach.fullWithinM - distanceM) / reach.decayM);
    if (share > most) most = share;
  }
  return most;
}
