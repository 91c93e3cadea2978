import type { FeatureCollection } from 'geojson';
import type { PackIndexEntry, PackManifest, PackPlaces, PackStation } from '../../analysis/records/pack.ts';

/** Everything the first screen needs of a record pack; no nights, no winters. */
export interface OpenPack {
  readonly entry: PackIndexEntry;
  /** Absolute address of the pack's folder, ending in `/`. */
  readonly url: string;
  readonly meta: PackManifest;
  readonly stations: readonly PackStation[];
  /** `null` where the pack has no outlines. */
  readonly land: FeatureCollection | null;
  readonly places: PackPlaces;
}
