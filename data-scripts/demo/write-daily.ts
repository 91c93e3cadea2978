import { civilDate, dayNumber, formatIsoDay } from '../../analysis/units/calendar.ts';
import { MISSING_TENTHS, wholeFahrenheit } from './daily-readings.ts';
import type { StationRecord } from './station-records.ts';

const ELEMENTS = ['TMAX', 'TMIN'] as const;
const SOURCE_FLAG = '0';

/** One station's daily file as text, in the station's own format. */
export function dailyText(record: StationRecord): string {
  switch (record.station.daily) {
    case 'dly':
      return monthLines(record);
    case 'long':
      return longRows(record);
    case 'wide':
      return wideRows(record);
    case 'order':
      return orderRows(record);
  }
}

/** GHCN-Daily `.dly`: a month and element a line, 31 fields of value, measurement, quality and source flag. */
function monthLines({ station, daily }: StationRecord): string {
  const lines: string[] = [];
  const last = daily.firstDay + daily.tminTenths.length - 1;
  let { year, month } = civilDate(daily.firstDay);
  for (let first = dayNumber(year, month, 1); first <= last; first = dayNumber(year, month, 1)) {
    const next = month === 12 ? dayNumber(year + 1, 1, 1) : dayNumber(year, month + 1, 1);
    for (const element of ELEMENTS) {
      const { values, flags } = elementOf(daily, element);
      let line = `${station.id}${year}${String(month).padStart(2, '0')}${element}`;
      let known = false;
      for (let day = first; day < first + 31; day++) {
        const i = day - daily.firstDay;
        const value = day < next && i >= 0 && i < values.length ? values[i] : MISSING_TENTHS;
        if (value === MISSING_TENTHS) {
          line += '-9999   ';
          continue;
        }
        known = true;
        line +=
          String(value).padStart(5) + ' ' + (flags[i] ? String.fromCharCode(flags[i]) : ' ') + SOURCE_FLAG;
      }
      if (known) lines.push(line);
    }
    ({ year, month } = civilDate(next));
  }
  return lines.join('\n') + '\n';
}

/** The archive's CSV a station: a value a row, all days of one element before the next element. */
function longRows({ station, daily }: StationRecord): string {
  const rows = ['ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME'];
  const time = hourText(station.tellsHour, station.readingHour);
  for (const element of ELEMENTS) {
    const { values, flags } = elementOf(daily, element);
    for (let i = 0; i < values.length; i++) {
      if (values[i] === MISSING_TENTHS) continue;
      const date = formatIsoDay(daily.firstDay + i).replaceAll('-', '');
      const flag = flags[i] ? String.fromCharCode(flags[i]) : '';
      rows.push(`${station.id},${date},${element},${values[i]},,${flag},${SOURCE_FLAG},${time}`);
    }
  }
  return rows.join('\n') + '\n';
}

/** The archive's access CSV: a day a row, each element with its attributes (measurement, quality, source flag, time). */
function wideRows({ station, site, daily }: StationRecord): string {
  const rows = [
    '"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"',
  ];
  const time = hourText(station.tellsHour, station.readingHour);
  for (let i = 0; i < daily.tminTenths.length; i++) {
    const cells = ELEMENTS.map((element) => {
      const { values, flags } = elementOf(daily, element);
      if (values[i] === MISSING_TENTHS) return ',';
      const flag = flags[i] ? String.fromCharCode(flags[i]) : '';
      return `"${String(values[i]).padStart(5)}",",${flag},${SOURCE_FLAG},${time}"`;
    });
    if (cells.every((cell) => cell === ',')) continue;
    const place = `"${station.lat}","${station.lon}","${site.elevationM}","${station.name}"`;
    rows.push(`"${station.id}","${formatIsoDay(daily.firstDay + i)}",${place},${cells.join(',')}`);
  }
  return rows.join('\n') + '\n';
}

/** An order CSV: a day a row in whole °F, without flags and without a word about the unit. */
function orderRows({ station, daily }: StationRecord): string {
  const rows: string[] = [];
  for (let i = 0; i < daily.tminTenths.length; i++) {
    const [tmax, tmin] = ELEMENTS.map((element) => {
      const value = elementOf(daily, element).values[i];
      return value === MISSING_TENTHS ? '' : `"${wholeFahrenheit(value / 10)}"`;
    });
    if (tmax === '' && tmin === '') continue;
    rows.push(`"${station.id}","${station.name}","${formatIsoDay(daily.firstDay + i)}",${tmax},${tmin}`);
  }
  return ['"STATION","NAME","DATE","TMAX","TMIN"', ...rows].join('\n') + '\n';
}

function elementOf(daily: StationRecord['daily'], element: (typeof ELEMENTS)[number]) {
  return element === 'TMIN'
    ? { values: daily.tminTenths, flags: daily.tminFlag }
    : { values: daily.tmaxTenths, flags: daily.tmaxFlag };
}

function hourText(told: boolean, hour: number): string {
  return told ? `${String(hour).padStart(2, '0')}00` : '';
}
