import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { wholeFahrenheit } from './daily-readings.ts';
import type { Planted } from './planted.ts';
import { randomStream } from './random-stream.ts';
import type { StationRecord } from './station-records.ts';
import { dayOf, HOURS_BEHIND_UTC } from './timeline.ts';

const MPH_PER_MS = 2.23694;
/** An airfield's clock reads this many minutes to the full hour when the observer writes the hourly report. */
const REPORT_MINUTES_EARLY = 7;

/** A station's hourly file as text and what was planted in it; the hours are left out of a span that lies before the record. */
export function hourlyText(record: StationRecord): { text: string; planted: Planted[] } | null {
  const { station, weather, hours } = record;
  if (!station.hourly) return null;
  const { firstDay } = weather.timeline;
  const start = Math.max(0, (dayOf(station.hourly.from) - firstDay) * 24);
  const { missing, spikes, planted } = plantHourly(record, start);
  const lines: string[] = station.hourly.format === 'lcd' ? [LCD_HEADER] : [];
  for (let i = start + 1; i < hours.tempC.length; i++) {
    if (missing(i)) continue;
    const tempC = hours.tempC[i] + (spikes.has(i) ? -22 : 0);
    const windMs = hours.windMs[i] < 0.8 ? 0 : hours.windMs[i];
    lines.push(
      station.hourly.format === 'lcd'
        ? lcdRow(station.id, firstDay, i, tempC, windMs)
        : isdLine(firstDay, i, tempC, windMs),
    );
  }
  return { text: lines.join('\n') + '\n', planted };
}

const LCD_HEADER = 'STATION,DATE,REPORT_TYPE,SOURCE,HourlyDryBulbTemperature,HourlyWindSpeed';

/** Hourly order CSV: local standard time, whole °F, whole miles an hour. */
function lcdRow(id: string, firstDay: number, i: number, tempC: number, windMs: number): string {
  const before = i - 1;
  const day = formatIsoDay(firstDay + Math.floor(before / 24));
  const time = `${String(before % 24).padStart(2, '0')}:${60 - REPORT_MINUTES_EARLY}:00`;
  return `${id},${day}T${time},FM-15,7,${wholeFahrenheit(tempC)},${Math.round(windMs * MPH_PER_MS)}`;
}

/** ISD-Lite: UTC, tenths of °C and of m/s, fixed width, -9999 for what the station doesn't measure. */
function isdLine(firstDay: number, i: number, tempC: number, windMs: number): string {
  const utc = i + HOURS_BEHIND_UTC;
  const [year, month, day] = formatIsoDay(firstDay + Math.floor(utc / 24)).split('-');
  const tenths = (value: number) => String(Math.round(value * 10)).padStart(6);
  const hour = String(utc % 24).padStart(2, '0');
  return `${year} ${month} ${day} ${hour}${tenths(tempC)} -9999 -9999 -9999${tenths(windMs)} -9999 -9999 -9999`;
}

/** Short and long silences of the instrument, and a single wild hour now and then. */
function plantHourly({ station, weather, hours }: StationRecord, start: number) {
  const random = randomStream(weather.seed, `hourly faults ${station.id}`);
  const total = hours.tempC.length;
  const silent = new Uint8Array(total);
  const spikes = new Set<number>();
  const planted: Planted[] = [];
  const date = (i: number) => formatIsoDay(weather.timeline.firstDay + Math.floor(i / 24));
  const entry = (kind: Planted['kind'], from: number, to: number, note: string): Planted => ({
    station: station.id,
    kind,
    element: 'temp',
    from: date(from),
    to: date(to),
    note,
  });
  const years = (total - start) / 8766;
  for (let n = 0; n < years * 3; n++) {
    const at = start + Math.floor(random.uniform() * (total - start));
    const length = Math.min(
      total - at,
      random.uniform() < 0.8 ? 1 + Math.floor(6 * random.uniform()) : 24 + Math.floor(60 * random.uniform()),
    );
    silent.fill(1, at, at + length);
    planted.push(
      entry('hourly gap', at, at + length - 1, `${length} h from ${at % 24} h local standard time`),
    );
  }
  for (let n = 0; n < years / 5; n++) {
    const at = start + Math.floor(random.uniform() * (total - start));
    if (silent[at]) continue;
    spikes.add(at);
    planted.push(entry('hourly spike', at, at, `22 degrees C too low at ${at % 24} h local standard time`));
  }
  return { missing: (i: number) => silent[i] === 1, spikes, planted };
}
