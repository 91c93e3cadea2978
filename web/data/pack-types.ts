import type { FeatureCollection } from 'geojson';

/** One line of `packs/index.json`; the first is the default. */
export interface PackEntry {
  readonly id: string;
  readonly title: string;
  readonly invented: boolean;
  /** Folder relative to `index.json`. */
  readonly path: string;
  readonly bytes: number;
  readonly stations: number;
  readonly winters: { readonly first: number; readonly last: number } | number;
}

/** `pack.json`, as far as the page reads it. */
export interface PackMeta {
  readonly schema: number;
  readonly id: string;
  readonly title: string;
  readonly invented: boolean;
  readonly hemisphere: 'north' | 'south' | 'both';
  /** West, south, east, north in degrees. */
  readonly bbox: readonly [number, number, number, number];
  readonly winters: { readonly first: number | null; readonly last: number | null };
  readonly sources: readonly {
    readonly name: string;
    readonly licence: string;
    readonly attribution: string;
  }[];
  readonly files: readonly { readonly path: string; readonly bytes: number; readonly sha256: string }[];
  readonly dropped: Readonly<Record<string, number>>;
  readonly doubtful: Readonly<Record<string, number>>;
  readonly notes: readonly string[];
}

/** One entry of `stations.json`. */
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

/** `places.json`. */
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
    /** 1 is the most important. */
    readonly rank: number;
  }[];
}

/** Everything the first screen needs; no nights, no winters. */
export interface OpenPack {
  readonly entry: PackEntry;
  /** Absolute address of the pack's folder, ending in `/`. */
  readonly url: string;
  readonly meta: PackMeta;
  readonly stations: readonly PackStation[];
  /** `null` where the pack has no outlines. */
  readonly land: FeatureCollection | null;
  readonly places: PackPlaces;
}
