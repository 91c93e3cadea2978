import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { asRead, dayExtremes, MISSING_TENTHS, type DailyRecord } from './daily-readings.ts';
import { noteGoodExtreme, plantFreezeGap, plantStationFaults } from './planted-by-station.ts';
import { plantEverydayFaults, planterFor, standingEntries, type Planted, type Planter } from './planted.ts';
import { randomStream } from './random-stream.ts';
import { regionalWeather, type RegionalWeather } from './regional-weather.ts';
import { siteAt, type Site } from './site-exposure.ts';
import { siteWeather, type SiteHours } from './site-weather.ts';
import { STATIONS, type DemoStation } from './stations.ts';
import { dayOf } from './timeline.ts';

/** Seed of the weather and the winters it covers (labelled by the year of their January). */
export interface DemoSpan {
  readonly seed: number;
  readonly firstWinter: number;
  readonly lastWinter: number;
}

/** The region as it ships: 74 winters, to 30 June 2025. */
export const DEMO_SPAN: DemoSpan = { seed: 143, firstWinter: 1952, lastWinter: 2025 };

/** Everything about one station, ready to be written. */
export interface StationRecord {
  readonly station: DemoStation;
  /** Where it stands at the end of its record. */
  readonly site: Site;
  readonly daily: DailyRecord;
  /** The full curve at the present site, from local midnight at the start of the weather's first day. */
  readonly hours: SiteHours;
  readonly weather: RegionalWeather;
  readonly planted: readonly Planted[];
}

const FREEZE_GAP_STATION = 'ZZC00000209';

/** Makes the stations' records one after the other, so that only one station's hours are in memory. */
export function* stationRecords(span: DemoSpan = DEMO_SPAN): Generator<StationRecord> {
  const weather = regionalWeather(span.seed, span.firstWinter, span.lastWinter);
  const present = STATIONS.map((one) => siteAt(one.id, one.lat, one.lon, one.built));
  const former = STATIONS.flatMap((one) =>
    one.moved ? [siteAt(`${one.id} before it moved`, one.moved.lat, one.moved.lon, one.moved.built)] : [],
  );
  const sites = [...present, ...former];
  const hoursOf = siteWeather(weather, sites);
  for (const [index, station] of STATIONS.entries()) {
    const hours = hoursOf(index);
    const formerIndex = sites.findIndex((site) => site.key === `${station.id} before it moved`);
    const before = formerIndex < 0 ? null : { hours: hoursOf(formerIndex), site: sites[formerIndex] };
    const made = readDays(station, hours, before?.hours ?? null, weather);
    if (!made) continue;
    const { daily, plant } = made;
    if (before && station.moved) noteMove(plant, station, sites[index], before.site);
    const flagged = station.daily !== 'order';
    plantEverydayFaults(plant, daily, randomStream(span.seed, `faults ${station.id}`), flagged);
    plantStationFaults(station.id, plant);
    if (station.id === FREEZE_GAP_STATION) plantFreezeGap(plant, weather);
    else noteGoodExtreme(plant, daily, weather);
    yield { station, site: sites[index], daily, hours, weather, planted: standingEntries(plant) };
  }
}

/** Reads the station's days off the curve (the former site's before the move); null when its span is outside the weather's. */
function readDays(
  station: DemoStation,
  hours: SiteHours,
  before: SiteHours | null,
  weather: RegionalWeather,
): { daily: DailyRecord; plant: Planter } | null {
  const { timeline } = weather;
  const firstDay = Math.max(dayOf(station.from), timeline.firstDay);
  const count = Math.min(dayOf(station.to), timeline.firstDay + timeline.days - 1) - firstDay + 1;
  if (count <= 0) return null;
  const daily: DailyRecord = {
    firstDay,
    tminTenths: new Int16Array(count).fill(MISSING_TENTHS),
    tmaxTenths: new Int16Array(count).fill(MISSING_TENTHS),
    tminFlag: new Uint8Array(count),
    tmaxFlag: new Uint8Array(count),
  };
  const plant = planterFor(station.id, daily);
  const movedOn = station.moved ? dayOf(station.moved.until) : -Infinity;
  for (let i = 0; i < count; i++) {
    const curve = before && firstDay + i < movedOn ? before : hours;
    const extremes = dayExtremes(curve.tempC, firstDay - timeline.firstDay + i, station.readingHour);
    if (!extremes) continue;
    daily.tminTenths[i] = asRead(extremes.minC, station);
    daily.tmaxTenths[i] = asRead(extremes.maxC, station);
    if (station.readingHour !== 24 && extremes.minIsLeftover && extremes.minC <= 0) {
      const date = formatIsoDay(firstDay + i);
      plant.note({
        kind: 'night booked twice',
        element: 'tmin',
        from: date,
        to: date,
        stored_c: daily.tminTenths[i] / 10,
      });
    }
  }
  if (station.readingHour !== 24) {
    const [from, to] = [firstDay, firstDay + count - 1].map(formatIsoDay);
    const told = station.tellsHour ? 'the file tells the hour' : 'the file does not tell the hour';
    plant.note({
      kind: 'morning reading',
      element: 'both',
      from,
      to,
      note: `read at ${station.readingHour} h; ${told}`,
    });
  }
  return { daily, plant };
}

function noteMove(plant: Planter, station: DemoStation, now: Site, before: Site): void {
  const date = station.moved!.until;
  const place = (site: Site) => `${site.lat}, ${site.lon}, ${site.elevationM} m`;
  plant.note({ kind: 'station moved', from: date, to: date, note: `from ${place(before)} to ${place(now)}` });
}
