import type { Level } from '../../analysis/tree/levels.ts';
import type { Condition, Rootstock } from '../../analysis/tree/penalties.ts';
import type { TemperatureUnit } from '../format/unit.ts';

/** A place someone chose: a station of the pack, a postcode or town of its list, or a point. */
export type Place =
  | { readonly by: 'station'; readonly id: string }
  | { readonly by: 'postcode'; readonly code: string }
  | { readonly by: 'point'; readonly lat: number; readonly lon: number };

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
}

export const AGE_YEARS_MAX = 100;
export const HORIZON_YEARS_MAX = 60;
