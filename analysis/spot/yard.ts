import type { MechanismId } from './mechanism.ts';

/** A point of the plan: metres east and north of the plot's south-west corner. */
export type PlanPoint = readonly [eastM: number, northM: number];

interface Drawn {
  /** Letters, figures and hyphens, unlike any other thing's of the yard. */
  readonly id: string;
}

/** Closed outlines list their corners once, in either sense of turning. */
interface Outlined extends Drawn {
  readonly outline: readonly PlanPoint[];
}

interface Lined extends Drawn {
  readonly line: readonly PlanPoint[];
}

export interface Building extends Outlined {
  readonly kind: 'building';
  readonly heightM: number;
  readonly heated: boolean;
  /** Masonry stores the sun's warmth; timber and sheet hardly do. */
  readonly masonry: boolean;
}

export interface Wall extends Lined {
  readonly kind: 'wall';
  readonly heightM: number;
  /** True for brick, stone, block; false for a fence. */
  readonly masonry: boolean;
  /** True where cold air can drain through: pickets, gaps at the foot. */
  readonly open: boolean;
}

/** Evergreen crown, roof or porch: what stands overhead, open below. */
export interface Canopy extends Outlined {
  readonly kind: 'canopy';
  /** Underside and top of the crown above the ground. */
  readonly baseM: number;
  readonly heightM: number;
  /** Share of the sky that a line through it is closed to, 0 to 1. */
  readonly density: number;
}

export interface Paving extends Outlined {
  readonly kind: 'paving';
}

/** A pond or pool. */
export interface Water extends Outlined {
  readonly kind: 'water';
}

export const GROUND_COVERS = ['bare', 'mulch', 'tall-grass'] as const;

/** Ground other than the short lawn that everything is measured against. */
export interface Ground extends Outlined {
  readonly kind: 'ground';
  readonly cover: (typeof GROUND_COVERS)[number];
}

/** A dense evergreen row, closed to the ground. */
export interface Windbreak extends Lined {
  readonly kind: 'windbreak';
  readonly heightM: number;
}

/** A low or a high point: the ground falls or rises towards it within `radiusM`. */
export interface Relief extends Drawn {
  readonly kind: 'hollow' | 'rise';
  readonly at: PlanPoint;
  /** Depth of a hollow, height of a rise; metres, above 0. */
  readonly byM: number;
  readonly radiusM: number;
}

export type YardThing = Building | Wall | Canopy | Paving | Water | Ground | Windbreak | Relief;
export type YardThingKind = YardThing['kind'];

/** A place in the yard where a tree might stand. */
export interface YardSpot extends Drawn {
  readonly name: string;
  readonly at: PlanPoint;
}

/** A yard drawn in true metres, north up, on a plot from (0, 0) to (`widthM`, `depthM`). */
export interface Yard {
  readonly name: string;
  readonly widthM: number;
  readonly depthM: number;
  readonly things: readonly YardThing[];
  readonly spots: readonly YardSpot[];
  /** Even fall of the ground; `null` where it is flat. */
  readonly slope: {
    /** Bearing the ground falls towards, degrees clockwise from north. */
    readonly towardsDeg: number;
    /** Metres of fall per 100 m. */
    readonly percent: number;
    /** Where on the whole hillside the yard lies. */
    readonly position: 'foot' | 'middle' | 'crest';
  } | null;
  /** A lake, bay or sea near the yard, where the place history doesn't hold it already; `null`: none. */
  readonly bigWater: {
    /** Bearing from the yard to the water, degrees clockwise from north. */
    readonly bearingDeg: number;
    readonly distanceM: number;
    readonly kind: 'lake' | 'sea';
  } | null;
  /** Bearing that the coldest winds come from, degrees clockwise from north. */
  readonly coldWindFromDeg: number;
  /** Degrees that the reader set in place of the table's, °C. */
  readonly own: Readonly<Partial<Record<MechanismId, { readonly calmC: number; readonly windyC: number }>>>;
}

/** Sides that a plot may have, m. */
export const PLOT_MIN_M = 4;
export const PLOT_MAX_M = 200;
/** Things on one plan. */
export const THINGS_MAX = 60;
/** Corners of one outline or line. */
export const CORNERS_MAX = 40;
/** Heights of what is drawn, m. */
export const THING_HEIGHT_MIN_M = 0.1;
export const THING_HEIGHT_MAX_M = 40;
