import { t } from '../language/t.ts';
import {
  Bool,
  DateDay,
  Dictionary,
  Int16,
  Int8,
  makeData,
  RecordBatch,
  Schema,
  Field,
  Struct,
  Table,
  tableFromIPC,
  tableToIPC,
  Utf8,
  type Data,
  Vector,
} from 'apache-arrow';
import { checkArrowStream } from './check-arrow.ts';
import { InputError } from './input-error.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from './nights.ts';
import type { WinterTable } from './winters.ts';

/** Side of a winters tile, degrees of latitude and longitude. */
const TILE_DEGREES = 2;

/** Name of the tile a place lies in, e.g. `n30w042`: the tile's south-west corner. */
export function tileOf(lat: number, lon: number): string {
  const south = Math.floor(lat / TILE_DEGREES) * TILE_DEGREES;
  const west = Math.floor((((lon + 540) % 360) - 180) / TILE_DEGREES) * TILE_DEGREES;
  const part = (value: number, plus: string, minus: string, digits: number) =>
    (value < 0 ? minus : plus) + String(Math.abs(value)).padStart(digits, '0');
  return part(south, 'n', 's', 2) + part(west, 'e', 'w', 3);
}

/**
 * Writes the winters of some stations as an uncompressed Arrow IPC stream: one row a station, winter and kind of night,
 * with the coldest sustained cold `s0`…`s24` (hundredths of °C, null where there was no such night) and its night `d0`…`d24`;
 * `dates_whole` where all stations know it.
 */
export function encodeWinterTile(stations: ReadonlyMap<string, WinterTable>): Uint8Array {
  const rows = [...stations].flatMap(([station, winters]) =>
    NIGHT_KINDS.flatMap((kind, k) =>
      Array.from(winters.winter, (_, w) => ({ station, winters, kind, k, w })),
    ),
  );
  const columns: [string, Data][] = [
    [
      'station',
      textData(
        rows.map((r) => r.station),
        0,
      ),
    ],
    ['winter', makeData({ type: new Int16(), data: Int16Array.from(rows, (r) => r.winters.winter[r.w]) })],
    [
      'kind',
      textData(
        rows.map((r) => r.kind),
        1,
        8,
      ),
    ],
    ['complete', boolData(rows.map((r) => r.winters.complete[r.w] === 1))],
    [
      'reason',
      textData(
        rows.map((r) => r.winters.reason[r.w]),
        2,
      ),
    ],
  ];
  if (rows.every((r) => r.winters.datesWhole)) {
    columns.push(['dates_whole', boolData(rows.map((r) => r.winters.datesWhole![r.w] === 1))]);
  }
  SUSTAINED_HOURS.forEach((hours, j) => {
    const levels = Int16Array.from(rows, (r) => r.winters.coldest[r.k][j][r.w]);
    const nights = Int32Array.from(rows, (r) => r.winters.coldestDay[r.k][j][r.w]);
    const { nullBitmap, nullCount } = presence(levels);
    columns.push([`s${hours}`, makeData({ type: new Int16(), data: levels, nullBitmap, nullCount })]);
    columns.push([`d${hours}`, makeData({ type: new DateDay(), data: nights, nullBitmap, nullCount })]);
  });
  const fields = columns.map(([name, data]) => new Field(name, data.type, data.nullCount > 0));
  const struct = makeData({
    type: new Struct(fields),
    length: rows.length,
    nullCount: 0,
    children: columns.map(([, data]) => data),
  });
  return tableToIPC(new Table(new RecordBatch(new Schema(fields), struct)), 'stream');
}

/**
 * Reads a winters tile back, station by station.
 * @throws InputError when the bytes are not a winters tile
 */
export function decodeWinterTile(bytes: Uint8Array, name = 'winters tile'): Map<string, WinterTable> {
  const table = readTable(bytes, name);
  const column = (key: string) => {
    const child = table.getChild(key);
    if (!child) throw new InputError(t`${name}: column "${key}" is missing`);
    return child;
  };
  const values = (key: string, kind: typeof Int16Array | typeof Int32Array) => {
    const one = column(key).data.at(0);
    // Of another kind it is as good as none.
    if (!(one?.values instanceof kind)) throw new InputError(t`${name}: column "${key}" is missing`);
    return one;
  };
  const station = column('station');
  const kind = column('kind');
  const reason = column('reason');
  const complete = column('complete');
  const datesWhole = table.getChild('dates_whole');
  const winter = values('winter', Int16Array).values as Int16Array;
  const levels = SUSTAINED_HOURS.map((hours) => values(`s${hours}`, Int16Array));
  const nights = SUSTAINED_HOURS.map((hours) => values(`d${hours}`, Int32Array));

  const result = new Map<string, WinterTable>();
  for (let from = 0; from < table.numRows;) {
    const id = station.get(from) as string;
    let to = from;
    while (to < table.numRows && station.get(to) === id) to++;
    const count = (to - from) / NIGHT_KINDS.length;
    if (!Number.isInteger(count) || result.has(id)) {
      throw new InputError(
        t`${name}: station ${id} has ${to - from} rows, not one a winter and kind of night`,
      );
    }
    const slice = (k: number) => from + k * count;
    NIGHT_KINDS.forEach((expected, k) => {
      if (kind.get(slice(k)) !== expected) {
        throw new InputError(
          t`${name}: station ${id} has kind "${kind.get(slice(k))}" where "${expected}" is due`,
        );
      }
    });
    result.set(id, {
      winter: Int16Array.from({ length: count }, (_, w) => winter[from + w]),
      complete: flags(complete, from, count),
      ...(datesWhole && { datesWhole: flags(datesWhole, from, count) }),
      reason: Array.from({ length: count }, (_, w) => reason.get(from + w) as string),
      coldest: NIGHT_KINDS.map((_, k) =>
        levels.map((column) =>
          knownOr(column, column.values as Int16Array, slice(k), count, MISSING_HUNDREDTHS),
        ),
      ),
      coldestDay: NIGHT_KINDS.map((_, k) =>
        nights.map((column) => knownOr(column, column.values as Int32Array, slice(k), count, 0)),
      ),
    });
    from = to;
  }
  return result;
}

function flags(column: Vector, from: number, count: number): Uint8Array {
  return Uint8Array.from({ length: count }, (_, w) => (column.get(from + w) ? 1 : 0));
}

/** Some rows of a column, with a value of their own where there is none. By bits, since a page waits for this. */
function knownOr<A extends Int16Array | Int32Array>(
  { nullBitmap, nullCount, offset }: Data,
  values: A,
  from: number,
  count: number,
  missing: number,
): A {
  const known = values.slice(from, from + count) as A;
  if (nullCount === 0) return known;
  for (let w = 0; w < count; w++) {
    const at = offset + from + w;
    if (((nullBitmap[at >> 3] >> (at & 7)) & 1) === 0) known[w] = missing;
  }
  return known;
}

function readTable(bytes: Uint8Array, name: string): Table {
  try {
    checkArrowStream(bytes);
    return tableFromIPC(bytes);
  } catch {
    throw new InputError(t`${name}: ${bytes.length} bytes that are not an Arrow stream`);
  }
}

/**
 * Texts by their place in a dictionary. Made by hand: Arrow's builders compile functions from text, which a page's content
 * security policy forbids.
 */
function textData(values: readonly string[], id: number, width: 8 | 16 = 16): Data {
  const words = [...new Set(values)];
  const places = new Map(words.map((word, at) => [word, at]));
  const encoded = words.map((word) => new TextEncoder().encode(word));
  const valueOffsets = new Int32Array(words.length + 1);
  encoded.forEach((bytes, at) => (valueOffsets[at + 1] = valueOffsets[at] + bytes.length));
  const data = new Uint8Array(valueOffsets[words.length]);
  encoded.forEach((bytes, at) => data.set(bytes, valueOffsets[at]));
  const dictionary = new Vector([makeData({ type: new Utf8(), valueOffsets, data })]);
  const indices = values.map((value) => places.get(value)!);
  return width === 8
    ? makeData({
        type: new Dictionary(new Utf8(), new Int8(), id),
        data: Int8Array.from(indices),
        dictionary,
      })
    : makeData({
        type: new Dictionary(new Utf8(), new Int16(), id),
        data: Int16Array.from(indices),
        dictionary,
      });
}

function boolData(values: readonly boolean[]): Data {
  // Whole runs of 64 bytes, as Arrow's builders make them.
  const data = new Uint8Array(64 * Math.ceil(values.length / 512));
  values.forEach((value, i) => {
    if (value) data[i >> 3] |= 1 << (i & 7);
  });
  return makeData({ type: new Bool(), data, length: values.length });
}

function presence(levels: Int16Array): { nullBitmap: Uint8Array; nullCount: number } {
  const nullBitmap = new Uint8Array(Math.ceil(levels.length / 8));
  let nullCount = 0;
  levels.forEach((level, i) => {
    if (level === MISSING_HUNDREDTHS) nullCount++;
    else nullBitmap[i >> 3] |= 1 << (i & 7);
  });
  return { nullBitmap, nullCount };
}
