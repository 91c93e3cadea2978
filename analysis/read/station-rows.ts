import type { RawDailyReadings, RawHourlyReadings } from '../records/series.ts';
import type { Station } from '../records/station.ts';

/** Hour of reading where the source doesn't tell. */
export const READING_HOUR_UNKNOWN = 255;

/** What a source tells about a station beside its id. */
export interface StationFacts {
  name: string;
  lat: number | null;
  lon: number | null;
  elevationM: number | null;
}

/** Rows of one station of one file, in growing arrays. Daily rows use `first` for tmin and `second` for tmax; hourly
 * rows use `first` for the temperature and `hour`. Values stay in the source's unit until the file is read. */
export class StationRows {
  readonly facts: StationFacts = { name: '', lat: null, lon: null, elevationM: null };
  length = 0;
  private size = 512;
  /** Day numbers, or codes of dates whose order isn't known yet. */
  day = new Int32Array(this.size);
  hour = new Float64Array(0);
  first = new Float64Array(this.size);
  second = new Float64Array(this.size);
  wind = new Float64Array(this.size);
  firstFlag = new Uint8Array(this.size);
  secondFlag = new Uint8Array(this.size);
  readingHour = new Uint8Array(this.size);
  line = new Int32Array(this.size);

  constructor(
    readonly id: string,
    private readonly hourly: boolean,
  ) {
    if (hourly) this.hour = new Float64Array(this.size);
  }

  /** Adds a row with the day and nothing else, and returns its index. */
  add(day: number, line: number): number {
    if (this.length === this.size) this.grow();
    const at = this.length;
    this.length += 1;
    this.day[at] = day;
    this.first[at] = NaN;
    this.second[at] = NaN;
    this.wind[at] = NaN;
    this.readingHour[at] = READING_HOUR_UNKNOWN;
    this.line[at] = line;
    return at;
  }

  /** Keeps the rows for which `keep` is true. */
  filter(keep: (row: number) => boolean): void {
    let kept = 0;
    for (let i = 0; i < this.length; i += 1) {
      if (!keep(i)) continue;
      this.day[kept] = this.day[i]!;
      if (this.hourly) this.hour[kept] = this.hour[i]!;
      this.first[kept] = this.first[i]!;
      this.second[kept] = this.second[i]!;
      this.wind[kept] = this.wind[i]!;
      this.firstFlag[kept] = this.firstFlag[i]!;
      this.secondFlag[kept] = this.secondFlag[i]!;
      this.readingHour[kept] = this.readingHour[i]!;
      this.line[kept] = this.line[i]!;
      kept += 1;
    }
    this.length = kept;
  }

  /** Cuts the arrays to their rows. */
  trim(): void {
    this.resize(this.length);
  }

  station(): Station {
    return { id: this.id, ...this.facts };
  }

  daily(file: string): RawDailyReadings {
    this.trim();
    return {
      station: this.station(),
      day: this.day,
      tminC: this.first,
      tmaxC: this.second,
      windMs: this.wind,
      tminFlag: this.firstFlag,
      tmaxFlag: this.secondFlag,
      readingHour: this.readingHour,
      file,
      line: this.line,
    };
  }

  hourlyReadings(file: string, localStandard: boolean): RawHourlyReadings {
    this.trim();
    const timeUtcH = new Float64Array(this.length);
    for (let i = 0; i < this.length; i += 1) timeUtcH[i] = this.day[i]! * 24 + this.hour[i]!;
    return {
      station: this.station(),
      timeUtcH,
      tempC: this.first,
      windMs: this.wind,
      tempFlag: this.firstFlag,
      localStandard,
      file,
      line: this.line,
    };
  }

  private grow(): void {
    this.resize(this.size * 2);
  }

  private resize(size: number): void {
    this.size = size;
    this.day = resized(this.day, new Int32Array(size));
    if (this.hourly) this.hour = resized(this.hour, new Float64Array(size));
    this.first = resized(this.first, new Float64Array(size));
    this.second = resized(this.second, new Float64Array(size));
    this.wind = resized(this.wind, new Float64Array(size));
    this.firstFlag = resized(this.firstFlag, new Uint8Array(size));
    this.secondFlag = resized(this.secondFlag, new Uint8Array(size));
    this.readingHour = resized(this.readingHour, new Uint8Array(size));
    this.line = resized(this.line, new Int32Array(size));
  }
}

function resized<A extends Int32Array | Float64Array | Uint8Array>(from: A, to: A): A {
  to.set(from.length > to.length ? from.subarray(0, to.length) : from);
  return to;
}
