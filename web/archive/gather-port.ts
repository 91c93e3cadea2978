import type { PackIndexEntry, PackManifest, PackPlaces } from '../../analysis/records/pack.ts';
import type { LocatedStation } from '../../analysis/records/station.ts';

/** What a pack is to be made of. */
export interface FetchedPack {
  readonly title: string;
  readonly invented: false;
  readonly files: readonly { readonly name: string; readonly blob: Blob }[];
  /** Where the stations stand: their files don't tell. */
  readonly stations: readonly LocatedStation[];
  readonly sources: PackManifest['sources'];
  /** Fetched records stand alone. */
  readonly join: null;
  readonly places?: PackPlaces;
}

/** Hears how far making a pack has come: a sentence, and the share that is done, 0 to 1, where it is known. */
export type MakingHeard = (doing: string, share: number | null) => void;

/** Makes a pack in this browser; results in its entry. @throws InputError in one sentence */
export type MakePack = (
  pack: FetchedPack,
  heard: MakingHeard,
  signal: AbortSignal,
) => Promise<PackIndexEntry>;
