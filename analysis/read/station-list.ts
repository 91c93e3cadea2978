import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import type { Station } from '../records/station.ts';
import type { ColumnMap, ColumnRole } from './column-map.ts';
import { degreesOf, elevationOf } from './coordinates.ts';
import { Fields } from './fields.ts';
import { fileStationId } from './read-records.ts';
import { headerNames, separatorOf } from './recognise.ts';
import { TableColumns } from './table-columns.ts';

/** Coordinates of one station given twice may differ by this much, degrees. */
const SAME_PLACE_DEGREES = 0.01;

/** Stations by id and, where the list names files, by file. */
export interface StationList {
  readonly byId: ReadonlyMap<string, Station>;
  /** By the file's name up to its first dot, for files that don't name their station. */
  readonly byFile: ReadonlyMap<string, Station>;
}

/** Longest list, letters: the archive's own of all stations has half of it. */
export const LIST_LONGEST = 20_000_000;

const GHCN_LINE = /^[A-Za-z]{2}[A-Za-z0-9_-]{9} +-?\d+\.\d+ +-?\d+\.\d+ +-?\d+\.\d+ /;
const NAMES: Readonly<Partial<Record<ColumnRole, readonly string[]>>> = {
  station: ['id', 'station', 'station_id'],
  name: ['name', 'station_name'],
  lat: ['lat', 'latitude'],
  lon: ['lon', 'longitude', 'lng'],
  elevation: ['elevation_m', 'elevation', 'elev_m', 'elev'],
};

/**
 * Reads a list of stations: `id,name,lat,lon,elevation_m` (a column `file` may name the file of a station), the
 * archive's fixed-width `ghcnd-stations.txt`, or any table that a column map of kind `stations` describes.
 *
 * @throws {InputError} naming the line: unknown columns, a latitude beyond 90 or a longitude beyond 180 degrees, a
 * station given twice with different coordinates.
 */
export function readStationList(
  text: string,
  fileName: string,
  columns: ColumnMap | null = null,
  maps: readonly ColumnMap[] = [],
): StationList {
  if (text.length > LIST_LONGEST)
    throw new InputError(
      t`${fileName} has ${sayCount(text.length)} letters; a list of stations has at most ${sayCount(LIST_LONGEST)}.`,
    );
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/);
  const first = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  if (first < 0) throw new InputError(t`${fileName} is empty.`);
  const list = new ListBeingRead(fileName);
  if (!columns && GHCN_LINE.test(`${lines[first]} `)) readGhcnLines(lines, list);
  else readTable(lines, first, columns ?? mapFor(lines[first]!, fileName, maps), list);
  return list;
}

function mapFor(header: string, fileName: string, maps: readonly ColumnMap[]): ColumnMap {
  const shipped = maps.find(
    (map) =>
      map.kind === 'stations' &&
      map.signature?.header?.toLowerCase() === header.replaceAll('"', '').toLowerCase(),
  );
  if (shipped) return shipped;
  const separator = separatorOf(header);
  const names = headerNames(header, separator).map((name) => name.toLowerCase());
  const found: Partial<Record<ColumnRole, number>> = {};
  for (const [role, known] of Object.entries(NAMES) as [ColumnRole, readonly string[]][]) {
    const at = known.map((name) => names.indexOf(name)).find((index) => index >= 0);
    if (at !== undefined) found[role] = at + 1;
  }
  if (!found.station || !found.lat || !found.lon) {
    throw new InputError(
      t`${fileName}, line 1: a list of stations needs the columns id, lat and lon (found ${names.slice(0, 8).join(', ')}).`,
    );
  }
  return { id: 'stations', title: t`list of stations`, kind: 'stations', separator, columns: found };
}

function readTable(lines: readonly string[], first: number, map: ColumnMap, list: ListBeingRead): void {
  const table = new TableColumns(map, list.fileName);
  const separator = map.separator ?? ',';
  const fileColumn = headerNames(lines[first]!, separator).findIndex((name) => name.toLowerCase() === 'file');
  const fields = new Fields(separator);
  lines.forEach((line, index) => {
    if (line.startsWith('#') || !table.take(line, 0, line.length, index + 1)) return;
    const where = t`${list.fileName}, line ${index + 1}`;
    if (!table.split(line, 0, line.length, false)) {
      throw new InputError(t`${where}: the row is too short to hold a station and its coordinates.`);
    }
    fields.split(line, 0, line.length, 1024);
    list.add(
      {
        id: table.text(line, 'station'),
        name: table.text(line, 'name'),
        lat: degreesOf(table.text(line, 'lat'), 'lat', where),
        lon: degreesOf(table.text(line, 'lon'), 'lon', where),
        elevationM: elevationOf(table.text(line, 'elevation')),
      },
      fileColumn >= 0 ? fields.text(line, fileColumn) : '',
      index + 1,
    );
  });
}

function readGhcnLines(lines: readonly string[], list: ListBeingRead): void {
  lines.forEach((line, index) => {
    if (line.trim() === '') return;
    const where = t`${list.fileName}, line ${index + 1}`;
    if (!GHCN_LINE.test(`${line} `))
      throw new InputError(t`${where}: not a line of a GHCN-Daily station list.`);
    list.add(
      {
        id: line.slice(0, 11),
        name: line.slice(41, 71).trim(),
        lat: degreesOf(line.slice(12, 20), 'lat', where),
        lon: degreesOf(line.slice(21, 30), 'lon', where),
        elevationM: elevationOf(line.slice(31, 37)),
      },
      '',
      index + 1,
    );
  });
}

class ListBeingRead implements StationList {
  readonly byId = new Map<string, Station>();
  readonly byFile = new Map<string, Station>();
  private readonly lineOf = new Map<string, number>();
  readonly fileName: string;

  constructor(fileName: string) {
    this.fileName = fileName;
  }

  add(station: Station, file: string, line: number): void {
    const fileId = file === '' ? '' : fileStationId(file);
    const named = /[A-Za-z0-9]/.test(station.id);
    if (!named && fileId === '')
      throw new InputError(t`${this.fileName}, line ${line}: the station has no id.`);
    const known = named ? station : { ...station, id: fileId };
    if (fileId !== '') this.byFile.set(fileId, known);
    if (!named) return;
    const before = this.byId.get(known.id);
    if (before && differs(before, known)) {
      throw new InputError(
        t`${this.fileName}, line ${line}: station ${known.id} stands at ${place(known)}, but in line ${this.lineOf.get(known.id)!} at ${place(before)}.`,
      );
    }
    if (before) return;
    this.byId.set(known.id, known);
    this.lineOf.set(known.id, line);
  }
}

function differs(a: Station, b: Station): boolean {
  if (a.lat === null || a.lon === null || b.lat === null || b.lon === null) return false;
  const turn = Math.abs(a.lon - b.lon);
  return Math.abs(a.lat - b.lat) > SAME_PLACE_DEGREES || Math.min(turn, 360 - turn) > SAME_PLACE_DEGREES;
}

function place(station: Station): string {
  return `${station.lat}, ${station.lon}`;
}

const loose = new WeakMap<StationList, ReadonlyMap<string, Station | null>>();

/** Stations by {@link looseId}, `null` where several share one; a list may hold a hundred thousand, so it is gone through once. */
function looselyNamed(list: StationList): ReadonlyMap<string, Station | null> {
  let known = loose.get(list);
  if (!known) {
    const made = new Map<string, Station | null>();
    for (const station of list.byId.values()) {
      const id = looseId(station.id);
      made.set(id, made.has(id) ? null : station);
    }
    loose.set(list, (known = made));
  }
  return known;
}

/** Ids without hyphens, blanks and leading zeros: archives write the same station as 722190-13874 and 72219013874. */
function looseId(id: string): string {
  return id
    .replace(/[^A-Za-z0-9]/g, '')
    .replace(/^0+/, '')
    .toUpperCase();
}

/**
 * The station of some readings as the list has it: by id, by id written otherwise, or, where the file didn't name its
 * station, by the name of the file. `null` when the list doesn't have it.
 */
export function findStation(list: StationList, id: string, fileName: string): Station | null {
  const exact = list.byId.get(id);
  if (exact) return exact;
  const fileId = fileStationId(fileName);
  const byFile = id === fileId ? list.byFile.get(fileId) : undefined;
  if (byFile) return byFile;
  return looselyNamed(list).get(looseId(id)) ?? null;
}
