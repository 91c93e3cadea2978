import type { Level } from '../../analysis/tree/levels.ts';
import type { Condition, Rootstock } from '../../analysis/tree/penalties.ts';
import type { TemperatureUnit } from '../format/unit.ts';
import type { Language } from '../language/languages.ts';

/**
 * A place someone chose: a station of the pack, a postcode or town of its list, or a point. Where there is no station
 * the reader may know the height of the ground better than the pack does, in whole metres.
 */
export type Place =
  | { readonly by: 'station'; readonly id: string }
  | { readonly by: 'postcode'; readonly code: string; readonly elevationM?: number }
  | { readonly by: 'point'; readonly lat: number; readonly lon: number; readonly elevationM?: number };

/** A corner of an area, degrees. */
export interface Corner {
  readonly lat: number;
  readonly lon: number;
}

/** Which winters the map's surface answers from. */
export type MapWinters = 'all' | 'last30';

/** What the surface tells: periods, one type against another, the last 30 winters against all, or where a tree lives long enough. */
export const MAP_SHOWS = ['periods', 'types', 'recent', 'where', 'cover'] as const;
export type MapShows = (typeof MAP_SHOWS)[number];

/**
 * Only what the reader chose; a key that is absent means "as the page would have it". Everything here and nothing else
 * goes into the address.
 */
export interface Chosen {
  readonly pack?: string;
  readonly place?: Place;
  /** Years since planting, 1-100; absent: mature. */
  readonly ageYears?: number;
  readonly condition?: Condition;
  readonly fruitLoad?: boolean;
  readonly container?: boolean;
  readonly notHardened?: boolean;
  readonly rootstock?: Rootstock;
  readonly level?: Level;
  /** Horizon for the chance of at least one hit, winters, 1-60. */
  readonly years?: number;
  /** Type whose row is open. */
  readonly type?: string;
  readonly showRootstocks?: boolean;
  readonly unit?: TemperatureUnit;
  /** What the page speaks, in the address so that links and codes on paper keep it. */
  readonly language?: Language;
  /** Places to compare, at most `PINS_MAX`. */
  readonly pins?: readonly Place[];
  /** Corners of an area in order, 3 to `CORNERS_MAX`. */
  readonly area?: readonly Corner[];
  /** Absent: all on record. */
  readonly mapWinters?: MapWinters;
  /** Absent: periods. */
  readonly mapShows?: MapShows;
  /** Type that the map holds against the one shown. */
  readonly against?: string;
  /** Winters that must pass between killing ones for a place to count, 2 to `AT_LEAST_MAX`. */
  readonly atLeast?: number;
  /** Where in the yard the tree stands: a named spot, or `yard:EAST,NORTH` in metres. Read where it is used. */
  readonly spot?: string;
  /** The yard as drawn, as `writeYardText` has it. */
  readonly yard?: string;
  /** What an own thermometer measured at the spot, as `writeMeasuredText` has it. */
  readonly measured?: string;
  /** Measures and their conditions, `a,b`. */
  readonly cover?: string;
  /** How a tree is planted, as the life of trees reads it. */
  readonly life?: string;
  /** What a buyer wants of a tree, as the choosing reads it. */
  readonly wishes?: string;
  /** What goes on the sheet to take home, as `readSheetText` has it. */
  readonly sheet?: string;
  /** What a buyer answered at the counter, as `readAnswersText` has it. */
  readonly counter?: string;
}

export const AGE_YEARS_MAX = 100;
export const AT_LEAST_MAX = 500;
export const PINS_MAX = 4;
export const CORNERS_MAX = 16;
/** Heights that a place on land may have, m. */
export const ELEVATION_MIN_M = -430;
export const ELEVATION_MAX_M = 8849;
export const HORIZON_YEARS_MAX = 60;
