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
    throw new InputError(`${file}: not a pack manifest (field "schema" is missing)`);
  }
  const { schema } = value;
  if (
    !Number.isInteger(schema) ||
    (schema as number) < OLDEST_READ_SCHEMA ||
    (schema as number) > PACK_SCHEMA
  ) {
    throw new InputError(
      `${file}: schema version ${String(schema)} can't be read; this program reads versions ${OLDEST_READ_SCHEMA} to ${PACK_SCHEMA}`,
    );
  }
  for (const field of ['id', 'title', 'bbox', 'winters', 'files', 'sources']) {
    if (!(field in value)) throw new InputError(`${file}: field "${field}" is missing`);
  }
  return value as PackManifest;
}

/** A postcode as people type it: case and blanks don't count. */
export function postcodeKey(code: string): string {
  return code.toUpperCase().replace(/\s+/g, '');
}
