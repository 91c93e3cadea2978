import type { BadRowReason } from '../../analysis/read/bad-rows.ts';
import type { TemperatureUnit } from '../../analysis/read/units-of-source.ts';
import type { PackManifest, PackPlaces } from '../../analysis/records/pack.ts';
import type { LocatedStation, Station } from '../../analysis/records/station.ts';

/** What only the owner of a file can tell where the file leaves it open. */
export interface ToldOfFile {
  readonly unit?: 'C' | 'F';
  readonly dateOrder?: 'day first' | 'month first';
}

/** A file the reader brought. */
export interface BroughtFile extends ToldOfFile {
  readonly key: number;
  readonly name: string;
  readonly blob: Blob;
}

/** What was found in a file. */
export type FoundFile =
  | {
      readonly kind: 'readings';
      /** Format in words. */
      readonly format: string;
      readonly unit: TemperatureUnit;
      readonly hourly: boolean;
      readonly rows: number;
      readonly stations: readonly Station[];
      readonly badRows: readonly BadRowReason[];
      readonly notes: readonly string[];
    }
  | { readonly kind: 'list'; readonly stations: number }
  | { readonly kind: 'unclear'; readonly asks: 'unit' | 'dateOrder'; readonly message: string }
  | { readonly kind: 'refused'; readonly message: string };

/** A station of the files brought, over all of them. */
export interface ExaminedStation {
  readonly station: Station;
  /** Names of the files it is in. */
  readonly files: readonly string[];
  /** What its record came to; `null` while nobody has told where it stands. */
  readonly record: {
    /** Days or hours with a reading. */
    readonly rows: number;
    readonly winters: {
      readonly complete: number;
      readonly first: number | null;
      readonly last: number | null;
    };
    /** Values taken out, and doubted, by reason. */
    readonly dropped: Readonly<Record<string, number>>;
    readonly doubtful: Readonly<Record<string, number>>;
    readonly notes: readonly string[];
  } | null;
}

/** What a pack of one's own is made of, apart from the files. */
export interface PackWish {
  readonly title: string;
  readonly invented: boolean;
  /** Places of stations as told by the reader; they win over the files. */
  readonly stations: readonly LocatedStation[];
  readonly sources: PackManifest['sources'];
  /** Address of the folder of the pack to join, ending in `/`; `null`: alone. */
  readonly join: string | null;
  readonly places?: PackPlaces;
}

/** How far gathering has come. */
export type GatherProgress =
  | { readonly doing: 'reading'; readonly bytes: number; readonly total: number }
  | { readonly doing: 'computing'; readonly stations: number; readonly total: number }
  | { readonly doing: 'fetching' }
  | { readonly doing: 'keeping' };
