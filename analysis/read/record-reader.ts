import type { LineReader } from './line-blocks.ts';
import { StationRows } from './station-rows.ts';
import type { TemperatureUnit, WindUnit } from './units-of-source.ts';

/** Reads the lines of one format into rows by station. */
export interface RecordReader {
  readonly hourly: boolean;
  readonly stations: Stations;
  readonly line: LineReader;
  /** Unit of the values read, `null` where the format doesn't state it. */
  readonly unit: TemperatureUnit | null;
  /** `null`: it follows from the temperature unit. */
  readonly windUnit: WindUnit | null;
  /** Whether hourly times are local standard time. */
  readonly localStandard: boolean;
  /** Rows left out because of marks that the format doesn't define; `null` or absent: none. */
  readonly missingRows?: MissingRows | null;
  /** Called after the last line. */
  end?(): void;
}

/** Rows whose readings were all taken for marks of missing ones, and the first of them. */
export interface MissingRows {
  readonly count: number;
  readonly line: number;
  readonly mark: string;
}

/** The rows of all stations of one file, found by the id written in the text. */
export class Stations {
  readonly byId = new Map<string, StationRows>();
  private last: StationRows | null = null;
  private readonly hourly: boolean;

  constructor(hourly: boolean) {
    this.hourly = hourly;
  }

  /** Rows of the station whose id is `text` from `from` to before `to`. */
  at(text: string, from: number, to: number): StationRows {
    const { last } = this;
    if (last !== null && last.id.length === to - from && text.startsWith(last.id, from)) return last;
    return this.of(text.slice(from, to));
  }

  of(id: string): StationRows {
    let rows = this.byId.get(id);
    if (!rows) {
      rows = new StationRows(id, this.hourly);
      this.byId.set(id, rows);
    }
    this.last = rows;
    return rows;
  }
}
