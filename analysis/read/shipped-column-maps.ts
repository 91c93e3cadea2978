import { parseColumnMap, type ColumnMap } from './column-map.ts';
import airportsTimeHour from './columns/airports-time-hour.json';
import airportsUtcDate from './columns/airports-utc-date.json';
import australiaLocations from './columns/australia-locations.json';
import australiaThreeHourly from './columns/australia-three-hourly.json';
import dateMinimum from './columns/date-minimum.json';
import dateMinimumTemperature from './columns/date-minimum-temperature.json';
import semicolonDayFirst from './columns/semicolon-day-first.json';
import shortYearMaxMin from './columns/short-year-max-min.json';
import spainCitySeries from './columns/spain-city-series.json';
import spainStationList from './columns/spain-station-list.json';
import stationListLonFirst from './columns/station-list-lon-first.json';
import tabDayMaxMin from './columns/tab-day-max-min.json';
import yearMonDayMin from './columns/year-mon-day-min.json';
import yearMonthDayMaxMin from './columns/year-month-day-max-min.json';

const SHIPPED = {
  'airports-time-hour': airportsTimeHour,
  'airports-utc-date': airportsUtcDate,
  'australia-locations': australiaLocations,
  'australia-three-hourly': australiaThreeHourly,
  'date-minimum': dateMinimum,
  'date-minimum-temperature': dateMinimumTemperature,
  'semicolon-day-first': semicolonDayFirst,
  'short-year-max-min': shortYearMaxMin,
  'spain-city-series': spainCitySeries,
  'spain-station-list': spainStationList,
  'station-list-lon-first': stationListLonFirst,
  'tab-day-max-min': tabDayMaxMin,
  'year-mon-day-min': yearMonDayMin,
  'year-month-day-max-min': yearMonthDayMaxMin,
};

/** The column maps that come with the project, checked; applied to a file whose signature they fit. */
export function shippedColumnMaps(): ColumnMap[] {
  return Object.entries(SHIPPED).map(([name, map]) => parseColumnMap(JSON.stringify(map), `${name}.json`));
}
