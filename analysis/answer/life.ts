import type { LifeReading } from '../tree/life/life-shapes.ts';
import type { HarvestCalendar, Picking } from '../tree/harvest.ts';
import type { Basis } from '../tree/catalogue.ts';

export type { AgeShare, CropCount, LifeReading, PlantingLife } from '../tree/life/life-shapes.ts';

/** How a tree is planted and looked after in every winter of the history. */
export interface Planting {
  /** Years since planting that the tree counts in its first winter, 1 to 5: a nursery's larger tree is no longer tender. */
  readonly startAgeYears: number;
  readonly picking: Picking;
  readonly calendar: HarvestCalendar;
}

/**
 * The life of trees planted in every winter of a place's history. Shares 0-1, intervals 90 %, ages in winters since
 * planting (1: the first winter). `null`: unknown, or without end.
 */
export interface LifeAnswer {
  readonly start_age_years: number;
  readonly picking: Picking;
  readonly calendar: HarvestCalendar;
  /** Ages told of: 1 to this. */
  readonly horizon_years: number;
  /** Winters planted in, oldest first: complete ones. */
  readonly winters: readonly number[];
  readonly types: readonly TypeLife[];
  /** Plain sentences that must stand beside the answer. */
  readonly notes: readonly string[];
}

export interface TypeLife {
  readonly id: string;
  readonly name: string;
  /** Winter since planting whose crop is the first. */
  readonly first_crop_year: number;
  readonly first_crop_basis: Basis;
  /** Winters without a crop after a loss of leaf, of wood. */
  readonly years_to_bear_again: { readonly leaf: number; readonly wood: number };
  /** Mean hardening (0-1) on nights that came within 2 °C of taking the mature tree's leaves; `null`: no such night. */
  readonly hardening_on_cold_nights: number | null;
  /** The colder reading: hardening counted night by night. */
  readonly night_by_night: LifeReading;
  /** Every tree taken as hardened. */
  readonly hardened: LifeReading;
}
