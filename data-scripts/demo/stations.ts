/** How a station's daily file is written: fixed-width months, or one of three kinds of CSV. */
export type DailyFormat = 'dly' | 'long' | 'wide' | 'order';

/** How a station's hourly file is written. */
export type HourlyFormat = 'isd-lite' | 'lcd';

/** An invented station. Ids start with ZZ, which no real network uses. */
export interface DemoStation {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  /** First and last day of the record, YYYY-MM-DD. */
  readonly from: string;
  readonly to: string;
  /** Unit the observer read in; whole °F is stored as tenths of °C, as old archives do. */
  readonly reads: 'whole °F' | 'tenths °C';
  readonly daily: DailyFormat;
  /** Local hour of the daily reading; 24 is midnight at the day's end. */
  readonly readingHour: number;
  /** Whether the daily file tells the reading hour (only the long and wide CSV can). */
  readonly tellsHour: boolean;
  /** Built-up share around it, 0-1. */
  readonly built: number;
  readonly hourly?: { readonly format: HourlyFormat; readonly from: string };
  /** Where it stood before it moved: the record up to the day before `until` was read there. */
  readonly moved?: {
    readonly until: string;
    readonly lat: number;
    readonly lon: number;
    readonly built: number;
  };
}

const END = '2025-06-30';

type Extra = Partial<Omit<DemoStation, 'id' | 'name' | 'lat' | 'lon' | 'from'>>;

function station(
  id: string,
  name: string,
  lat: number,
  lon: number,
  from: string,
  extra: Extra = {},
): DemoStation {
  return {
    id,
    name,
    lat,
    lon,
    from,
    to: END,
    reads: id.startsWith('ZZC') ? 'whole °F' : 'tenths °C',
    daily: 'dly',
    readingHour: 24,
    tellsHour: false,
    built: 0,
    ...extra,
  };
}

/** ZZC: volunteers reading whole °F; ZZA: farm stations reading tenths of °C; ZZW: airfields with hourly readings. */
export const STATIONS: readonly DemoStation[] = [
  station('ZZW00000101', 'Sallowmere Airfield', 31.118, -42.13, '1951-07-01', {
    reads: 'whole °F',
    hourly: { format: 'lcd', from: '1996-01-01' },
  }),
  station('ZZW00000102', 'Strandside Airfield', 31.15, -41.74, '1962-07-01', {
    hourly: { format: 'isd-lite', from: '1998-07-01' },
  }),
  station('ZZW00000103', 'Ewerbridge Airfield', 31.425, -42.36, '1957-07-01', {
    hourly: { format: 'isd-lite', from: '1996-01-01' },
  }),
  station('ZZW00000104', 'Rillmouth Airfield', 30.73, -43.02, '1971-10-01', {
    reads: 'whole °F',
    hourly: { format: 'lcd', from: '2001-01-01' },
  }),
  station('ZZC00000201', 'Sallowmere Harbour', 31.068, -42.045, '1951-07-01', { built: 0.25 }),
  station('ZZC00000202', 'Sallowmere Botanic Garden', 31.095, -42.085, '1954-09-01', { built: 0.2 }),
  station('ZZC00000203', 'Sallowmere College', 31.055, -42.095, '1978-07-01', {
    daily: 'long',
    tellsHour: true,
    built: 0.25,
  }),
  station('ZZC00000204', 'Ewerbridge Waterworks', 31.41, -42.285, '1951-07-01', {
    moved: { until: '1987-05-01', lat: 31.372, lon: -42.295, built: 0.05 },
  }),
  station('ZZC00000205', 'Thistleford', 31.328, -42.675, '1952-07-01', { readingHour: 7 }),
  station('ZZC00000206', 'Corrow Foot', 31.528, -42.7, '1955-07-01', {
    daily: 'long',
    tellsHour: true,
    readingHour: 7,
  }),
  station('ZZC00000207', 'Cockle Quay', 31.025, -41.878, '1958-07-01', { daily: 'order' }),
  station('ZZC00000208', 'Saltern', 30.6, -42.69, '1951-07-01'),
  station('ZZC00000209', 'Saltern Brook', 30.87, -42.6, '1956-07-01'),
  station('ZZC00000210', 'Wickel', 30.735, -42.02, '1961-07-01'),
  station('ZZC00000211', 'Whelk Bay', 31.695, -41.79, '1953-07-01'),
  station('ZZC00000212', 'Gannet Haven', 31.412, -41.44, '1959-07-01'),
  station('ZZC00000213', 'Rillmouth', 30.675, -43.055, '1954-07-01', { built: 0.15 }),
  station('ZZC00000214', 'Hollin', 31.69, -42.985, '1960-07-01'),
  station('ZZC00000215', 'Mereside', 31.158, -42.205, '1963-10-01'),
  station('ZZC00000216', 'Little Ewer Mill', 31.545, -42.365, '1966-07-01', { to: '2012-11-30' }),
  station('ZZC00000217', 'Ewer Lock', 31.315, -42.185, '1951-07-01', { to: '1998-04-30' }),
  station('ZZC00000218', 'Rill Farm', 31.04, -43.115, '1970-07-01'),
  station('ZZC00000219', 'Nether Wend', 31.745, -41.985, '1974-07-01'),
  station('ZZC00000220', 'Scar Beck', 31.493, -42.87, '1968-07-01', { to: '2019-03-31' }),
  station('ZZC00000221', 'Upper Thistle', 31.32, -42.93, '1977-07-01'),
  station('ZZC00000222', 'Strandside', 31.118, -41.705, '1956-07-01', { built: 0.1 }),
  station('ZZA00000301', 'Plain Orchards', 31.205, -42.555, '1968-07-01', { daily: 'wide', tellsHour: true }),
  station('ZZA00000302', 'Leat Farm', 31.09, -42.44, '1982-07-01'),
  station('ZZA00000303', 'Wickel Down', 30.86, -42.41, '1988-07-01'),
  station('ZZA00000304', 'Sedge Broad', 31.21, -41.85, '1991-07-01'),
  station('ZZA00000305', 'Tarn Beck Orchard', 31.64, -42.69, '1985-07-01'),
  station('ZZA00000306', 'Foothill School', 31.605, -42.61, '1994-07-01'),
  station('ZZA00000307', 'Bay Head', 31.2, -41.96, '1999-07-01'),
  station('ZZA00000308', 'Hook Spit', 30.8, -41.935, '2022-07-01'),
  station('ZZS00000401', 'Marram Ness Light', 30.437, -42.535, '1951-07-01', {
    daily: 'long',
    tellsHour: true,
  }),
  station('ZZS00000402', 'Gannet Head Light', 31.468, -41.365, '1951-07-01'),
  station('ZZS00000403', 'Long Strand Lifeboat', 31.165, -41.568, '1964-07-01'),
  station('ZZS00000404', 'Heron Isle', 30.935, -42.005, '1976-07-01'),
  station('ZZS00000405', 'Far Skerry', 30.425, -41.153, '1979-07-01'),
  station('ZZS00000406', 'Corrow Top', 31.565, -43.115, '1972-07-01'),
  station('ZZS00000407', 'Corrow Water Dam', 31.565, -42.755, '1951-07-01'),
];
