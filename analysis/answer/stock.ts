import { sayCount } from '../language/figures.ts';
import { sayList } from '../language/lists.ts';
import { said, t } from '../language/t.ts';
import { namedColumns } from '../read/named-columns.ts';
import { headerNames, separatorOf } from '../read/recognise.ts';
import { InputError } from '../records/input-error.ts';
import type { CsvCell } from '../records/csv-text.ts';
import { findType } from '../tree/catalogue.ts';
import { matchType } from '../tree/match-type.ts';
import { textRecords } from './batch-lines.ts';

/** One line of a nursery's own list. */
export interface StockRow {
  readonly typeId: string;
  /** As the nursery writes it: `3 gal`, `C-20`; `''`: not said. */
  readonly size: string;
  /** Years since planting as it is sold; `null`: not said. */
  readonly ageYears: number | null;
}

/** A line that could not be taken, and why. */
export interface StockFault {
  readonly line: number;
  readonly words: string;
}

/** A list as read from a file. */
export interface StockReading {
  readonly rows: readonly StockRow[];
  readonly faults: readonly StockFault[];
  /** Columns left out, as the file names them. */
  readonly ignored: readonly string[];
}

export const STOCK_ROWS_MOST = 500;
export const STOCK_BYTES_MOST = 200_000;
export const STOCK_SIZE_LONGEST = 40;
export const STOCK_AGE_MOST = 30;

type Role = 'type' | 'id' | 'size' | 'age';

/** Names of columns in English and Spanish, as {@link namedColumns} wants them. */
const NAMES: Readonly<Record<Role, readonly string[]>> = {
  id: ['id', 'typeid', 'idtipo'],
  type: [
    'type',
    'name',
    'variety',
    'cultivar',
    'kind',
    'plant',
    'tipo',
    'nombre',
    'variedad',
    'planta',
    'especie',
  ],
  size: ['size', 'pot', 'potsize', 'container', 'tamano', 'maceta', 'envase', 'formato', 'contenedor'],
  age: ['age', 'ageyears', 'years', 'yearsold', 'edad', 'anos', 'edadanos'],
};
const COLUMNS = ['id', 'name', 'size', 'age_years'] as const;
const LONGEST_SHOWN = 40;

/**
 * A nursery's list from CSV: a header with a column of types (ids or names), and sizes and ages where there are any, in any
 * order. A line that can't be taken is told of and the rest go on.
 * @throws InputError for a file without such a header, or beyond the limits
 */
export function readStock(text: string): StockReading {
  if (text.length > STOCK_BYTES_MOST)
    throw new InputError(
      t`The list has ${sayCount(text.length)} letters; at most ${sayCount(STOCK_BYTES_MOST)} are taken.`,
    );
  const plain = text.replace(/^\ufeff/, '');
  const separator = separatorOf(plain.split(/[\r\n]/, 1)[0]);
  const records = [...textRecords(plain, separator)].filter(({ text: row }) => row.trim() !== '');
  const [header, ...lines] = records;
  const names = header ? headerNames(header.text, separator) : [];
  const { at, ignored } = namedColumns(names, NAMES);
  if (at.type === undefined && at.id === undefined)
    throw new InputError(
      t`Line 1 names no column of types: one must be called type, name or id (tipo, nombre).`,
    );
  if (lines.length > STOCK_ROWS_MOST)
    throw new InputError(
      t`The list has ${sayCount(lines.length)} lines; at most ${sayCount(STOCK_ROWS_MOST)} are taken.`,
    );
  const rows: StockRow[] = [];
  const faults: StockFault[] = [];
  for (const { line, text: row } of lines) {
    const cells = headerNames(row, separator);
    const told = readRow((role) => unquoted(cells[at[role] ?? -1] ?? ''));
    if ('words' in told) faults.push({ line, words: told.words });
    else rows.push(told);
  }
  return { rows, faults, ignored };
}

/** The same list as a table to be written. */
export function stockTable(rows: readonly StockRow[]): {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CsvCell[])[];
} {
  return {
    columns: COLUMNS,
    rows: rows.map(({ typeId, size, ageYears }) => [typeId, findType(typeId)?.name ?? '', size, ageYears]),
  };
}

function readRow(cell: (role: Role) => string): StockRow | { readonly words: string } {
  const id = findType(cell('id'));
  const name = cell('type') === '' ? cell('id') : cell('type');
  const match = id ? { type: id } : matchType(name);
  if (!match.type)
    return { words: unmatched(name, 'near' in match ? match.near.map((type) => said(type.name)) : []) };
  const age = readAge(cell('age'));
  if (age === undefined)
    return {
      words: t`“${shorten(cell('age'))}” is no age: whole years from 1 to ${STOCK_AGE_MOST} are taken.`,
    };
  return { typeId: match.type.id, size: cell('size').slice(0, STOCK_SIZE_LONGEST), ageYears: age };
}

function unmatched(name: string, near: readonly string[]): string {
  if (name === '') return t`It names no type.`;
  const shown = shorten(name);
  if (near.length === 0) return t`“${shown}” is no type of the catalogue.`;
  return t`“${shown}” could be ${sayList(near, 'or')}: name one of them.`;
}

/** `null`: not said; `undefined`: no age. Half years count down: a tree is as tender as its last full year. */
function readAge(text: string): number | null | undefined {
  if (text === '') return null;
  const [, years] = /^(\d{1,3})(?:[.,]\d{1,2})?\s*(?:y|yrs?|years?|a|años?|anos?)?\.?$/i.exec(text) ?? [];
  const age = Number(years);
  return age >= 1 && age <= STOCK_AGE_MOST ? age : undefined;
}

/** What was written with an apostrophe, so that no spreadsheet runs it, is read back as it was. */
function unquoted(text: string): string {
  return text.replace(/^'(?=[\s"]*[=+\-@\uff1d\uff0b\uff0d\uff20])/, '').trim();
}

function shorten(text: string): string {
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}
