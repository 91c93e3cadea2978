import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { postcodeKey, type PackPlaces } from '../records/pack.ts';
import type { BadRow, BatchAsk, BatchPlace, BatchRow } from './batch.ts';

/** Length of US ZIP codes, whose leading zeros spreadsheets drop. */
const ZIP_LENGTH = 5;

/** Rows with their places; those whose postcode the pack doesn't know are bad rows. */
export interface LocatedBatch {
  readonly rows: readonly BatchRow[];
  /** Each place once, however many rows ask about it. */
  readonly places: readonly BatchPlace[];
  readonly bad: readonly BadRow[];
}

/** Looks the rows' postcodes up in a pack. Rows keep their order. */
export function locateBatch(asks: readonly BatchAsk[], { postcodes }: PackPlaces): LocatedBatch {
  const byCode = new Map(postcodes.map((entry) => [looseCode(entry.code), entry]));
  const places: BatchPlace[] = [];
  const known = new Map<string, number>();
  const rows: BatchRow[] = [];
  const bad: BadRow[] = [];
  for (const { line, label, customer, where, elevationM } of asks) {
    const found = where.by === 'point' ? { ...where, code: '', name: '' } : findCode(where.code, byCode);
    if (!found) {
      const { code } = where as { code: string };
      bad.push({ line, reason: unknownCode(postcodes.length), text: code });
      continue;
    }
    const { lat, lon, code, name } = found;
    const key = `${lat} ${lon} ${elevationM}`;
    let place = known.get(key);
    if (place === undefined) {
      place = places.length;
      known.set(key, place);
      places.push({ lat, lon, elevationM });
    }
    rows.push({ line, label: label || name, customer, postcode: code, place });
  }
  return { rows, places, bad };
}

/** Every postcode of a pack as a row of its own; its line is its number in the list. */
export function askAllPostcodes({ postcodes }: PackPlaces): BatchAsk[] {
  return postcodes.map(({ code, name }, at) => ({
    line: at + 1,
    label: name,
    customer: '',
    where: { by: 'postcode', code },
    elevationM: null,
  }));
}

/** Indices of the places in pieces of at most `size`, neighbours together, so that whoever answers a piece needs few models. */
export function batchPieces(places: readonly BatchPlace[], size: number): number[][] {
  const order = places
    .map(({ lat, lon }, at) => ({ at, row: Math.floor(lat), column: Math.floor(lon) }))
    .sort((a, b) => a.row - b.row || a.column - b.column || a.at - b.at)
    .map(({ at }) => at);
  return Array.from({ length: Math.ceil(order.length / size) }, (_, piece) =>
    order.slice(piece * size, (piece + 1) * size),
  );
}

type Entry = PackPlaces['postcodes'][number];

/** As written; else without what follows a hyphen (`32801-1234`), or with the zeros that a spreadsheet took away. */
function findCode(code: string, byCode: ReadonlyMap<string, Entry>): Entry | undefined {
  const plain = looseCode(code);
  const digits = /^(\d{3,5})(?:\.0)?(?:-\d{4})?$/.exec(code.trim())?.[1];
  return (
    byCode.get(plain) ?? (digits === undefined ? undefined : byCode.get(digits.padStart(ZIP_LENGTH, '0')))
  );
}

/** Hyphens don't count, as in the page's search. */
function looseCode(code: string): string {
  return postcodeKey(code).replaceAll('-', '');
}

function unknownCode(known: number): string {
  return known === 0
    ? t`the open pack has no postcodes: give lat and lon`
    : t`the postcode is not in the pack, which has ${sayCount(known)}`;
}
