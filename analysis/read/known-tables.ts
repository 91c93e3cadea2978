import { t } from '../language/t.ts';
import type { Column, ColumnMap, ColumnRole } from './column-map.ts';
import type { TemperatureUnit } from './units-of-source.ts';

/** Header names by what they mean, lower case. Names that only one publisher uses belong into a column map. */
const NAMES: Readonly<Partial<Record<ColumnRole, readonly string[]>>> = {
  station: ['station', 'station_id', 'stationid', 'id'],
  name: ['name', 'station_name'],
  lat: ['latitude', 'lat'],
  lon: ['longitude', 'lon', 'lng'],
  elevation: ['elevation', 'elevation_m', 'elev_m', 'elev'],
  date: ['date'],
  tmin: ['tmin', 'tmin_c', 'tmin_f', 'min_temp', 'mintemp', 'temp_min'],
  tmax: ['tmax', 'tmax_c', 'tmax_f', 'max_temp', 'maxtemp', 'temp_max'],
  wind: ['awnd', 'wind_ms'],
  tminAttributes: ['tmin_attributes'],
  tmaxAttributes: ['tmax_attributes'],
  tobsAttributes: ['tobs_attributes'],
  prcpAttributes: ['prcp_attributes'],
};

/**
 * The description of a table that its header alone identifies, `null` for any other:
 * NOAA hourly order files (local climatological data), the per-station access files of GHCN-Daily with their
 * attributes (tenths of °C), order files of daily summaries (unit not stated), and plain `date,tmax,tmin`.
 */
export function knownTable(header: readonly string[], separator: string): ColumnMap | null {
  const names = header.map((name) => name.toLowerCase());
  if (names.includes('date') && names.includes('hourlydrybulbtemperature'))
    return hourlyOrder(names, separator);
  const columns = rolesOf(names);
  if (columns.date === undefined || columns.tmin === undefined) return null;
  const access = names.slice(0, 3).join() === 'station,date,latitude' && columns.tminAttributes !== undefined;
  const order = names.includes('station') && names.includes('name');
  return {
    id: access ? 'ghcn-access' : order ? 'ghcn-order' : 'plain-daily',
    title: access
      ? t`GHCN-Daily access table`
      : order
        ? t`daily summaries order table`
        : t`plain daily table`,
    kind: 'daily',
    separator,
    ...(separator === ';' ? { decimal: ',' as const } : {}),
    ...unitStated(access, names),
    ...(names.includes('wind_ms') ? { windUnit: 'm/s' as const } : {}),
    columns,
  };
}

function rolesOf(names: readonly string[]): Partial<Record<ColumnRole, Column>> {
  const columns: Partial<Record<ColumnRole, Column>> = {};
  for (const [role, known] of Object.entries(NAMES) as [ColumnRole, readonly string[]][]) {
    const found = known.map((name) => names.indexOf(name)).find((index) => index >= 0);
    if (found !== undefined) columns[role] = found + 1;
  }
  return columns;
}

function unitStated(access: boolean, names: readonly string[]): { unit?: TemperatureUnit } {
  if (access) return { unit: 'tenthsC' };
  if (names.includes('tmin_c')) return { unit: 'C' };
  if (names.includes('tmin_f')) return { unit: 'F' };
  return {};
}

/** Hourly order files: °F and mph, local standard time; summaries of the day and month stand among the reports. */
function hourlyOrder(names: readonly string[], separator: string): ColumnMap {
  const at = (name: string): number => names.indexOf(name) + 1;
  const column = (role: ColumnRole, name: string): Partial<Record<ColumnRole, Column>> =>
    names.includes(name) ? { [role]: at(name) } : {};
  const report = ['report_type', 'reporttype', 'reporttpye'].find((name) => names.includes(name));
  return {
    id: 'hourly-order',
    title: t`hourly order table`,
    kind: 'hourly',
    separator,
    windUnit: 'mph',
    clock: 'local standard',
    columns: {
      date: at('date'),
      temp: at('hourlydrybulbtemperature'),
      ...column('wind', 'hourlywindspeed'),
      ...column('station', 'station'),
      ...column('name', names.includes('station_name') ? 'station_name' : 'name'),
      ...column('lat', 'latitude'),
      ...column('lon', 'longitude'),
      ...column('elevation', 'elevation'),
    },
    ...(report ? { skipRows: { column: at(report), words: ['SOD', 'SOM', 'SOY'] } } : {}),
  };
}
