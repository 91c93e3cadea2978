import { bytes, url } from 'virtual:us-postcodes';
import { readPostcodes } from '../../analysis/archive/us-postcodes.ts';
import type { PackPlaces } from '../../analysis/records/pack.ts';
import { reach } from '../data/reach.ts';

/** Bytes that loading the list takes. */
export const POSTCODES_BYTES = bytes;

let loaded: Promise<PackPlaces['postcodes']> | null = null;

/** All ZIP codes of the United States, from this site; loaded when first asked for. @throws InputError when they don't come */
export function loadPostcodes(): Promise<PackPlaces['postcodes']> {
  loaded ??= reach(new URL(url, document.baseURI).href, (address) => fetch(address)).then(async (response) =>
    readPostcodes(await response.text()),
  );
  loaded.catch(() => (loaded = null));
  return loaded;
}
