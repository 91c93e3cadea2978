import { signedAreaM2 } from './outline.ts';
import { CORNERS_MAX, type Yard, type YardThing } from './yard.ts';

/**
 * Directions looked along, evenly round the horizon, each standing for the 5 degrees about it. The share of sky hidden
 * comes right to 0.00001 for endless walls and to 0.004 for houses and crowns (README).
 */
export const AZIMUTHS = 72;

/** What was seen from the point looked round from last, by azimuth; overwritten by the next look. */
export interface Outlook {
  /** Squared sine of the elevation up to which solid things close the sky, 0-1. */
  readonly solid: Float64Array;
  /**
   * Crowns above that: how many bands of elevation each azimuth has, and of each band its ends (squared sines) and
   * density: first bands of all azimuths, then second ones.
   */
  readonly bandCount: Int32Array;
  readonly bandLow: Float64Array;
  readonly bandHigh: Float64Array;
  readonly bandDensity: Float64Array;
  /** Working room of one crown: crossings of its outline per azimuth, their distances, m, laid out alike. */
  readonly crossingCount: Int32Array;
  readonly crossings: Float64Array;
  /** Working room for the ends of an azimuth's bands. */
  readonly ends: Float64Array;
}

/** All of a yard that can stand before the sky, laid out for looking from many points. Not to be shared by threads. */
export interface PreparedObstacles {
  /** Sine and cosine of each azimuth's bearing. */
  readonly east: Float64Array;
  readonly north: Float64Array;
  /** Per thing: its first corner, whether an outline closes, whether it is a crown (open below, dense in part). */
  readonly firstCorner: Int32Array;
  readonly closed: Uint8Array;
  readonly crown: Uint8Array;
  /** Per thing: 1 or -1 where sides turned towards a point are those that go clockwise or anticlockwise round it; 0: either. */
  readonly facing: Int8Array;
  /** Per thing: underside (0 for solid things) and top, m above the ground; share of the sky closed behind it. */
  readonly baseM: Float64Array;
  readonly topM: Float64Array;
  readonly density: Float64Array;
  readonly cornerEast: Float64Array;
  readonly cornerNorth: Float64Array;
  readonly outlook: Outlook;
}

type Standing = Extract<YardThing, { readonly heightM: number }>;

function stands(thing: YardThing): thing is Standing {
  return 'heightM' in thing;
}

function cornersOf(thing: Standing) {
  return 'outline' in thing ? thing.outline : thing.line;
}

function newOutlook(crowns: readonly Standing[]): Outlook {
  const bandsMax = crowns.reduce((sum, crown) => sum + (cornersOf(crown).length >> 1) + 1, 0);
  return {
    solid: new Float64Array(AZIMUTHS),
    bandCount: new Int32Array(AZIMUTHS),
    bandLow: new Float64Array(AZIMUTHS * bandsMax),
    bandHigh: new Float64Array(AZIMUTHS * bandsMax),
    bandDensity: new Float64Array(AZIMUTHS * bandsMax),
    crossingCount: new Int32Array(AZIMUTHS),
    crossings: new Float64Array(AZIMUTHS * CORNERS_MAX),
    ends: new Float64Array(2 * bandsMax),
  };
}

/**
 * Buildings, walls, windbreaks and crowns of a yard (checked before: `checkYard`), ready to be looked at from many
 * points. The ground counts as level: a thing's height is taken above the ground of whoever looks.
 */
export function prepareObstacles(yard: Pick<Yard, 'things'>): PreparedObstacles {
  const things = yard.things.filter(stands);
  const corners = things.flatMap(cornersOf);
  const firstCorner = new Int32Array(things.length + 1);
  things.forEach((thing, at) => (firstCorner[at + 1] = firstCorner[at] + cornersOf(thing).length));
  const bearings = Float64Array.from({ length: AZIMUTHS }, (_, k) => ((k + 0.5) * 2 * Math.PI) / AZIMUTHS);
  return {
    east: bearings.map(Math.sin),
    north: bearings.map(Math.cos),
    firstCorner,
    closed: Uint8Array.from(things, (thing) => ('outline' in thing ? 1 : 0)),
    crown: Uint8Array.from(things, ({ kind }) => (kind === 'canopy' ? 1 : 0)),
    facing: Int8Array.from(things, (thing) =>
      thing.kind === 'building' ? Math.sign(signedAreaM2(thing.outline)) : 0,
    ),
    baseM: Float64Array.from(things, (thing) => (thing.kind === 'canopy' ? thing.baseM : 0)),
    topM: Float64Array.from(things, ({ heightM }) => heightM),
    density: Float64Array.from(things, (thing) => (thing.kind === 'canopy' ? thing.density : 1)),
    cornerEast: Float64Array.from(corners, ([east]) => east),
    cornerNorth: Float64Array.from(corners, ([, north]) => north),
    outlook: newOutlook(things.filter(({ kind }) => kind === 'canopy')),
  };
}
