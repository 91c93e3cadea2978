import type { LocatedStation } from '../../analysis/records/station.ts';

/** An hourly airport record used to fit and to check; files carry no coordinates, so they stand here. */
export interface Airport {
  /** File in the hourly folder. */
  readonly file: string;
  /** Station id inside the file, `null` where the file has one station. */
  readonly id: string | null;
  readonly station: LocatedStation;
  /** Airports that share weather: left out together, so that none is judged by its neighbour's nights. */
  readonly place: string;
  /** Local standard time ahead of UTC, hours: days are booked from midnight to midnight of it. */
  readonly standardH: number;
}

function airport(
  file: string,
  id: string | null,
  name: string,
  lat: number,
  lon: number,
  standardH: number,
  place: string,
): Airport {
  const station = { id: id ?? file, name, lat, lon, elevationM: null };
  return { file, id, station, place, standardH };
}

const NEW_YORK = [
  ['EWR', 'Newark', 40.692, -74.169],
  ['JFK', 'New York JFK', 40.64, -73.779],
  ['LGA', 'New York LaGuardia', 40.777, -73.873],
] as const;

export const AIRPORTS: readonly Airport[] = [
  airport('columbia_sc_2013-2022.csv.gz', null, 'Columbia SC', 33.942, -81.118, -5, 'Columbia'),
  airport('dallas_fort_worth_2012-2021.csv.gz', null, 'Dallas Fort Worth', 32.898, -97.019, -6, 'Dallas'),
  airport('los_angeles_2013-2022.csv.gz', null, 'Los Angeles', 33.938, -118.389, -8, 'Los Angeles'),
  airport('nashville_2003-2012.csv.gz', null, 'Nashville 2003-2012', 36.119, -86.689, -6, 'Nashville'),
  airport('nashville_2014-2023.csv.gz', null, 'Nashville 2014-2023', 36.119, -86.689, -6, 'Nashville'),
  airport('reno_2013-2022.csv.gz', null, 'Reno', 39.484, -119.771, -8, 'Reno'),
  airport(
    'lcd_full_columns_sample_atlanta_2020.csv.gz',
    '72219013874',
    'Atlanta',
    33.64,
    -84.43,
    -5,
    'Atlanta',
  ),
  ...['2013', '2023'].flatMap((year) =>
    NEW_YORK.map(([id, name, lat, lon]) =>
      airport(`nyc_3airports_${year}.csv.gz`, id, `${name} ${year}`, lat, lon, -5, 'New York'),
    ),
  ),
  airport('pnw_seattle_portland_2014.csv.gz', 'SEA', 'Seattle', 47.449, -122.309, -8, 'Seattle'),
  airport('pnw_seattle_portland_2014.csv.gz', 'PDX', 'Portland', 45.589, -122.597, -8, 'Portland'),
  airport('isd-lite/071690-99999-2017.gz', null, 'Troyes', 48.324, 4.02, 1, 'North-east France'),
  airport('isd-lite/071800-99999-2017.gz', null, 'Nancy-Essey', 48.687, 6.221, 1, 'North-east France'),
  airport('isd-lite/071810-99999-2017.gz', null, 'Nancy-Ochey', 48.581, 5.955, 1, 'North-east France'),
  airport('isd-lite/071900-99999-2017.gz', null, 'Strasbourg', 48.549, 7.64, 1, 'North-east France'),
  airport('isd-lite/317350-99999-2016.gz', null, 'Khabarovsk', 48.528, 135.188, 10, 'Khabarovsk'),
];
