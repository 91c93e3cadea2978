import { computeStation } from '../../analysis/gather/compute-station.ts';
import type { WithoutLines } from '../../analysis/gather/assemble-pack.ts';
import type { RawReadings } from '../../analysis/gather/raw-readings.ts';
import { ReasonCount } from '../../analysis/gather/reason-count.ts';
import { StationRegister } from '../../analysis/gather/station-register.ts';
import { t } from '../../analysis/language/t.ts';
import { findStation } from '../../analysis/read/station-list.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { LocatedStation, Station } from '../../analysis/records/station.ts';
import type { ExaminedStation } from './brought.ts';
import { STATIONS_MAX } from './limits.ts';
import type { ReadFile } from './read-brought.ts';

/** A station computed, its lines of the large tables out of the heap. */
export interface OwnStation extends WithoutLines {
  readonly nights: Blob;
  readonly droppedLines: Blob;
}

interface Seen {
  readonly files: { readonly name: string; readonly readings: RawReadings }[];
}

/** The stations of all files read, each computed once for where it stands. */
export class OwnStations {
  readonly #files = new Map<number, { readonly name: string; readonly file: ReadFile }>();
  readonly #computed = new Map<string, { readonly key: string; readonly station: OwnStation }>();

  /** True once some station's place is known. */
  get known(): boolean {
    return this.#computed.size > 0;
  }

  take(key: number, name: string, file: ReadFile): void {
    this.#files.set(key, { name, file });
  }

  forget(key: number): void {
    this.#files.delete(key);
  }

  /**
   * What the files' stations came to, by id.
   * @param told places told by the reader; they win over the files
   * @param between called after each station, for others to get a turn
   * @throws InputError when two files place one station far apart, or there are too many stations
   */
  async examine(
    told: readonly LocatedStation[],
    between: (stations: number, total: number) => Promise<void>,
  ): Promise<ExaminedStation[]> {
    const { seen, register } = this.#settle(told);
    const examined: ExaminedStation[] = [];
    for (const [id, { files }] of seen) {
      await between(examined.length, seen.size);
      const located = register.located(id);
      const rows = files.reduce((sum, { readings }) => sum + readings.line.length, 0);
      examined.push({
        station:
          located ?? files.map(({ readings }) => readings.station).find(named) ?? files[0].readings.station,
        files: files.map(({ name }) => name),
        record: located && recordOf(this.#compute(located, files), rows, register.moved(id)),
      });
    }
    return examined;
  }

  /**
   * All stations computed, by id.
   * @throws InputError as `examine`, and when a station has no place
   */
  async all(
    told: readonly LocatedStation[],
    between: (stations: number, total: number) => Promise<void>,
  ): Promise<{ stations: OwnStation[]; notes: string[] }> {
    const { seen, register } = this.#settle(told);
    if (seen.size === 0) throw new InputError(t`None of the files holds readings of a station.`);
    const stations: OwnStation[] = [];
    const notes: string[] = [];
    for (const [id, { files }] of seen) {
      await between(stations.length, seen.size);
      const located = register.located(id);
      if (!located) throw new InputError(t`Nobody has told where station ${id} stands.`);
      stations.push(this.#compute(located, files));
      const moved = register.moved(id);
      if (moved) notes.push(moved);
    }
    return { stations, notes: [...this.#notes(), ...notes] };
  }

  /** Sentences about the files. */
  #notes(): string[] {
    return [...this.#files.values()].flatMap(({ name, file: { readings } }) => [
      ...(readings?.notes ?? []),
      ...(readings?.badRows ?? []).map(
        ({ reason, count, lines, example }) =>
          t`${name}: ${count} rows left out, ${reason}, first on line ${lines[0]} (“${example}”).`,
      ),
    ]);
  }

  #settle(told: readonly LocatedStation[]): { seen: Map<string, Seen>; register: StationRegister } {
    const read = [...this.#files.values()].flatMap(({ name, file: { readings } }) =>
      [...(readings?.daily ?? []), ...(readings?.hourly ?? [])].map((raw) => ({ name, raw })),
    );
    const lists = [...this.#files.values()].flatMap(({ file: { list } }) => list ?? []);
    const listed = new Map<string, Station>();
    for (const { name, raw } of read) {
      const found = lists.map((list) => findStation(list, raw.station.id, name)).find((entry) => entry);
      if (found) listed.set(raw.station.id, { ...found, id: raw.station.id });
    }
    for (const station of told) listed.set(station.id, station);
    const register = new StationRegister(listed);
    const seen = new Map<string, Seen>();
    for (const { name, raw } of read) {
      register.note(raw.station, name);
      const { id } = raw.station;
      const before = seen.get(id) ?? { files: [] };
      before.files.push({ name, readings: raw });
      seen.set(id, before);
    }
    if (seen.size > STATIONS_MAX)
      throw new InputError(t`The files hold ${seen.size} stations; the limit is ${STATIONS_MAX}.`);
    return { seen: new Map([...seen].sort(([a], [b]) => (a < b ? -1 : 1))), register };
  }

  #compute(located: LocatedStation, files: Seen['files']): OwnStation {
    const key = JSON.stringify([located, files.map(({ name, readings }) => [name, readings.line.length])]);
    const before = this.#computed.get(located.id);
    if (before?.key === key) return before.station;
    const { nightsCsv, droppedCsv, ...rest } = computeStation(
      located,
      files.map(({ readings }) => readings),
    );
    const station = { ...rest, nights: new Blob([nightsCsv]), droppedLines: new Blob([droppedCsv]) };
    this.#computed.set(located.id, { key, station });
    return station;
  }
}

function named(station: Station): boolean {
  return station.name !== '' && station.name !== station.id;
}

function recordOf(
  { built: { winters }, dropped, doubtful, notes }: OwnStation,
  rows: number,
  moved: string | null,
): ExaminedStation['record'] {
  const complete = [...winters.winter].filter((_, w) => winters.complete[w] === 1);
  return {
    rows,
    winters: { complete: complete.length, first: complete[0] ?? null, last: complete.at(-1) ?? null },
    dropped: counted(dropped),
    doubtful: counted(doubtful),
    notes: [...(moved ? [moved] : []), ...notes],
  };
}

function counted(values: readonly { readonly reason: string }[]): Record<string, number> {
  const count = new ReasonCount();
  count.add(values);
  return count.counts;
}
