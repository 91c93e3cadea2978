import { DataType, type Table, type Vector } from 'apache-arrow';
import { t } from '../../analysis/language/t.ts';
import { formatIsoDay } from '../../analysis/units/calendar.ts';

export type Cell = string | number | boolean | null;

/** A result in plain values: dates `YYYY-MM-DD`, timestamps with time, whole numbers too large to be exact as text. */
export interface ResultTable {
  readonly columns: readonly string[];
  /** Types in a word or two, one a column. */
  readonly types: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** There were more rows than the limit. */
  readonly truncated: boolean;
}

const MS_PER_DAY = 86_400_000;

/** Reads an Arrow result into plain values, at most `limit` rows. */
export function tableRows(table: Table, limit = Infinity): ResultTable {
  const { fields } = table.schema;
  const count = Math.min(table.numRows, limit);
  const readers = fields.map((field, c) => cellReader(field.type, table.getChildAt(c)));
  return {
    columns: fields.map(({ name }) => name),
    types: fields.map(({ type }) => typeName(type)),
    rows: Array.from({ length: count }, (_, i) => readers.map((read) => read(i))),
    truncated: table.numRows > limit,
  };
}

/** A column's type in a word or two. */
function typeName(type: DataType): string {
  if (DataType.isDecimal(type)) return `decimal(${type.precision},${type.scale})`;
  if (DataType.isInt(type)) return t`integer`;
  if (DataType.isFloat(type)) return t`number`;
  if (DataType.isUtf8(type)) return t`text`;
  if (DataType.isBool(type)) return t`true or false`;
  if (DataType.isDate(type)) return t`date`;
  if (DataType.isTimestamp(type)) return t`time`;
  return String(type).toLowerCase();
}

function cellReader(type: DataType, vector: Vector | null): (i: number) => Cell {
  return (i) => plainCell(type, vector?.get(i));
}

/**
 * One value. Arrow gives decimals unscaled, 64-bit integers as bigint, dates and timestamps as milliseconds, lists and
 * structs as objects of its own.
 */
function plainCell(type: DataType, value: unknown): Cell {
  if (value === null || value === undefined) return null;
  if (DataType.isDecimal(type)) return scaled(decimalText(value), type.scale);
  if (typeof value === 'bigint')
    return Number.isSafeInteger(Number(value)) ? Number(value) : value.toString();
  if (DataType.isDate(type)) return formatIsoDay(Math.floor(Number(value) / MS_PER_DAY));
  if (DataType.isTimestamp(type))
    return new Date(Number(value))
      .toISOString()
      .replace('T', ' ')
      .replace(/(\.000)?Z$/, '');
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  if (DataType.isList(type)) {
    const inner = type.children[0].type;
    return `[${[...(value as Iterable<unknown>)].map((entry) => String(plainCell(inner, entry) ?? 'null')).join(', ')}]`;
  }
  if (DataType.isStruct(type)) {
    const entries = (value as { toJSON(): Record<string, unknown> }).toJSON();
    return `{${type.children.map((field) => `${field.name}: ${String(plainCell(field.type, entries[field.name]) ?? 'null')}`).join(', ')}}`;
  }
  return String(value);
}

/** Digits of an unscaled decimal: Arrow gives four 32-bit words, lowest first, two's complement. */
function decimalText(value: unknown): bigint {
  if (typeof value === 'bigint') return value;
  if (typeof value === 'number') return BigInt(value);
  const words = value as Uint32Array;
  let whole = 0n;
  for (let i = words.length - 1; i >= 0; i--) whole = (whole << 32n) | BigInt(words[i] >>> 0);
  return BigInt.asIntN(32 * words.length, whole);
}

/** A decimal with its point set: a number where that is exact enough to read, else text. */
function scaled(unscaled: bigint, scale: number): Cell {
  const negative = unscaled < 0n;
  const digits = (negative ? -unscaled : unscaled).toString().padStart(scale + 1, '0');
  const text = `${negative ? '-' : ''}${digits.slice(0, digits.length - scale)}${scale > 0 ? `.${digits.slice(-scale)}` : ''}`;
  return digits.length <= 15 ? Number(text) : text;
}
