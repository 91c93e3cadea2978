import { t } from '../language/t.ts';
import { InputError } from './input-error.ts';

/** Version of the pack's layout that this code writes; it reads this one and the one before. */
export const PACK_SCHEMA = 1;
const OLDEST_READ_SCHEMA = 1;

/** `pack.json`: what a pack holds and where it comes from. */
export interface PackManifest {
  readonly schema: number;
  readonly id: string;
  readonly title: string;
  /** True when the region and its readings are made up. */
  readonly invented: boolean;
  readonly hemisphere: 'north' | 'south' | 'both';
  /** West, south, east, north in degrees. */
  readonly bbox: readonly [number, number, number, number];
  /** First and last winter that is complete at some station. */
  readonly winters: { readonly first: number; readonly last: number };
  readonly stations: { readonly count: number };
  readonly sources: readonly {
    readonly name: string;
    readonly licence: string;
    readonly attribution: string;
  }[];
  readonly files: readonly { readonly path: string; readonly bytes: number; readonly sha256: string }[];
  /** Values taken out of the record, and values kept but doubted, counted by reason. */
  readonly dropped: Readonly<Record<string, number>>;
  readonly doubtful: Readonly<Record<string, number>>;
  readonly notes: readonly string[];
  /** How winters vary over the land, for estimates between stations; absent in packs that were built without. */
  readonly place?: PackPlaceModel;
  /** How good estimates between stations are, by leaving stations out; absent where there were too few to leave out. */
  readonly leave_out?: PackLeaveOut;
}

/** Covariance of a quantity over the land by distance (see `place/covariance.ts`). */
export interface PackCovariance {
  readonly kind: 'exponential' | 'spherical';
  readonly sill: number;
  readonly rangeKm: number;
  readonly nugget: number;
}

/** Figures fitted when a pack is built (see `place/place-parameters.ts`). */
export interface PackPlaceModel {
  readonly mean: PackCovariance;
  readonly logScale: PackCovariance;
  readonly anomaly: { readonly share: number; readonly rangeKm: number };
  readonly fitted: boolean;
  /** What leaving stations out says of the errors the covariances promise, by duration; absent in packs built before. */
  readonly errors?: readonly PackPlaceErrors[];
}

/** Errors met at stations left out against those promised, for one duration (see `place/promised-errors.ts`). */
export interface PackPlaceErrors {
  /** Mean square of error over standard error: of the station mean, and of the logarithm of the L-scale. */
  readonly mean: number;
  readonly logScale: number;
  /** Correlation of the two errors. */
  readonly correlation: number;
}

/** Stations left out and estimated by the others, when the pack was built. Figures of single stations: `leave-out.json`. */
export interface PackLeaveOut {
  /** Each station by all others. */
  readonly one: readonly PackLeaveOutErrors[];
  /** A third of the stations by the other two thirds. */
  readonly third: readonly PackLeaveOutErrors[];
}

/** An interval against what was observed. */
export interface PackIntervalScore {
  /** Share of stations whose observed level lies inside the 90 % interval. */
  readonly coverage: number;
  readonly mean_width_c: number;
  /** Interval score (Gneiting and Raftery 2007, equation 43), °C: width plus 20 for each degree outside. Less is better. */
  readonly score_c: number;
}

/**
 * Errors of the level that 1 winter in 10 reaches, for one duration. Errors are estimate less observed, so plus is too warm.
 * The observed level is the fit of the station's own record.
 */
export interface PackLeaveOutErrors {
  readonly hours: number;
  /** Stations judged: left out, with 20 complete winters, a station of those kept within 100 km. */
  readonly stations: number;
  /** From all winters the estimate has. */
  readonly mean_error_c: number;
  readonly bias_c: number;
  /** The same stations by the level of the nearest station kept, and by 8 neighbours weighted by inverse squared distance, -6.5 °C/km. */
  readonly nearest_mean_error_c: number;
  readonly inverse_distance_mean_error_c: number;
  /** The whole interval (interpolation and sampling): meant for the level in the long run, which own records only estimate. */
  readonly interval: PackIntervalScore;
  /** Estimate from the very winters of the station's record: its interval holds the error of interpolation alone. */
  readonly same_winters: PackIntervalScore & { readonly mean_error_c: number; readonly bias_c: number };
  /** Share of winters hit, predicted over observed, same winters, thresholds hit in 5 to 50 % of all winters left out. */
  readonly hit_ratio: number | null;
}

/** `leave-out.json`: what charts draw of the stations, a third left out. */
export interface PackLeaveOutDetails {
  readonly third: readonly PackLeftOut[];
}

/** Details for one duration. */
export interface PackLeftOut {
  readonly hours: number;
  readonly stations: readonly PackLeftOutStation[];
  /** Predicted chances of a hit by bins, whole degrees as thresholds, same winters. */
  readonly reliability: readonly PackReliabilityBin[];
}

/** Chances of one bin: their mean, and the share of those winters that were hit. */
export interface PackReliabilityBin {
  readonly predicted: number;
  readonly observed: number;
  /** Winters of stations times thresholds. */
  readonly count: number;
}

/** A station left out: level that 1 winter in 10 reaches by its own record and by the others, with 90 % interval, °C. */
export interface PackLeftOutStation {
  readonly id: string;
  readonly observed_c: number;
  readonly predicted_c: number;
  readonly low_c: number;
  readonly high_c: number;
}

/** An entry of `stations.json`. */
export interface PackStation {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevation_m: number | null;
  readonly coast_km: number | null;
  readonly winters: {
    readonly complete: number;
    readonly first: number | null;
    readonly last: number | null;
  };
  readonly basis: 'daily' | 'hourly' | 'both';
  readonly tile: string;
}

/** `places.json`: where people live. */
export interface PackPlaces {
  readonly postcodes: readonly {
    readonly code: string;
    readonly name: string;
    readonly lat: number;
    readonly lon: number;
  }[];
  readonly towns: readonly {
    readonly name: string;
    readonly lat: number;
    readonly lon: number;
    readonly rank: number;
  }[];
}

/** An entry of `packs/index.json`; the first is the default. */
export interface PackIndexEntry {
  readonly id: string;
  readonly title: string;
  readonly invented: boolean;
  readonly path: string;
  readonly bytes: number;
  readonly stations: number;
  readonly winters: { readonly first: number; readonly last: number };
}

/**
 * Checks that a parsed `pack.json` is one this code can read.
 * @throws InputError naming the file and the schema version or the missing field
 */
export function checkManifest(value: unknown, file: string): PackManifest {
  if (typeof value !== 'object' || value === null || !('schema' in value)) {
    throw new InputError(t`${file}: not a pack manifest (field "schema" is missing)`);
  }
  const { schema } = value;
  if (
    !Number.isInteger(schema) ||
    (schema as number) < OLDEST_READ_SCHEMA ||
    (schema as number) > PACK_SCHEMA
  ) {
    throw new InputError(
      t`${file}: schema version ${typeof schema === 'number' ? schema : '?'} can't be read; this program reads versions ${OLDEST_READ_SCHEMA} to ${PACK_SCHEMA}`,
    );
  }
  for (const field of ['id', 'title', 'bbox', 'winters', 'files', 'sources']) {
    if (!(field in value)) throw new InputError(t`${file}: field "${field}" is missing`);
  }
  return value as PackManifest;
}

/** `32801` of a US ZIP code with its further four figures (`32801-1234`, or run together as a scanner has it); else `null`. */
export function zipWithoutFour(code: string): string | null {
  return /^\s*(\d{5})-?\d{4}\s*$/.exec(code)?.[1] ?? null;
}

/** A postcode as people type it: case and blanks don't count. */
export function postcodeKey(code: string): string {
  return code.toUpperCase().replace(/\s+/g, '');
}
