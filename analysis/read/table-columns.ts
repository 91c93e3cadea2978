import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { COLUMN_ROLES, type Column, type ColumnMap, type ColumnRole } from './column-map.ts';
import { Fields } from './fields.ts';
import { headerNames } from './recognise.ts';

const ABSENT = -1;
const NEVER_ABSENT: ReadonlySet<ColumnRole> = new Set([
  'date',
  'year',
  'month',
  'day',
  'tmin',
  'temp',
  'lat',
  'lon',
]);

/** Where the columns of a table stand: header names are resolved once, fields are then found without copying. */
export class TableColumns {
  /** The field found last, from `from` to before `to`. */
  from = 0;
  to = 0;
  /** Whether any column tells of quality or of the hour of reading. */
  readonly hasFlags: boolean;
  private readonly fields: Fields;
  private readonly fixed: boolean;
  private readonly separator: string;
  private readonly index: Partial<Record<ColumnRole, number>> = {};
  private lineFrom = 0;
  private lineTo = 0;
  private linesToSkip: number;
  private headerPending: boolean;
  private headerCount = 0;
  private needed = 0;
  private skipIndex = ABSENT;
  private readonly map: ColumnMap;
  private readonly fileName: string;

  constructor(map: ColumnMap, fileName: string) {
    this.map = map;
    this.fileName = fileName;
    this.fixed = map.layout === 'fixed';
    this.separator = map.layout === 'blanks' ? ' ' : (map.separator ?? ',');
    this.fields = new Fields(this.separator);
    this.linesToSkip = map.skipLines ?? 0;
    this.headerPending = !this.fixed && map.header !== false;
    this.hasFlags = COLUMN_ROLES.some(
      (role) => /Flag|Attributes|readingTime/.test(role) && role in map.columns,
    );
    if (!this.headerPending) this.resolve([], 0);
  }

  has(role: ColumnRole): boolean {
    return this.map.columns[role] !== undefined;
  }

  /** Whether the line is a row of data; headers, blank lines and comments are dealt with here. */
  take(text: string, from: number, to: number, line: number): boolean {
    if (this.linesToSkip > 0) {
      this.linesToSkip -= 1;
      return false;
    }
    if (to === from || (to - from < 200 && text.slice(from, to).trim() === '')) return false;
    if (this.map.comment !== undefined && text.startsWith(this.map.comment, from)) return false;
    if (!this.headerPending) return true;
    this.headerPending = false;
    this.resolve(headerNames(text.slice(from, to), this.separator), line);
    return false;
  }

  /** Splits a row; false when it is too short to hold the columns, or the file ends within it. */
  split(text: string, from: number, to: number, unfinished: boolean): boolean {
    this.lineFrom = from;
    this.lineTo = to;
    if (this.fixed) return to - from >= this.needed;
    const { fields } = this;
    fields.split(text, from, to, unfinished ? 1024 : this.needed);
    return fields.count >= this.needed && !(unfinished && fields.count < this.headerCount);
  }

  /** Finds the field of a role; false where the table has none. */
  locate(text: string, role: ColumnRole): boolean {
    const index = this.index[role];
    if (index === undefined) return false;
    if (!this.fixed) {
      if (index >= this.fields.count) return false;
      this.from = this.fields.start[index]!;
      this.to = this.fields.end[index]!;
      return true;
    }
    const [first, last] = this.map.columns[role] as readonly [number, number];
    let from = this.lineFrom + first - 1;
    let to = Math.min(this.lineFrom + last, this.lineTo);
    while (from < to && text.charCodeAt(from) === 32) from += 1;
    while (to > from && text.charCodeAt(to - 1) === 32) to -= 1;
    this.from = from;
    this.to = to;
    return true;
  }

  /** Finds the field of the column by which rows are left out. */
  find(column: Column): boolean {
    if (Array.isArray(column) || this.skipIndex === ABSENT) return false;
    this.from = this.fields.start[this.skipIndex]!;
    this.to = this.fields.end[this.skipIndex]!;
    return this.skipIndex < this.fields.count;
  }

  text(text: string, role: ColumnRole): string {
    return this.locate(text, role) ? text.slice(this.from, this.to).replaceAll('""', '"') : '';
  }

  private resolve(header: readonly string[], line: number): void {
    const names = header.map((name) => name.toLowerCase());
    this.headerCount = names.length;
    const absent: string[] = [];
    for (const [role, column] of Object.entries(this.map.columns) as [ColumnRole, Column][]) {
      if (this.fixed) {
        this.index[role] = 0;
        // Lines may be cut after their last value, so only what no row can lack must fit.
        if (NEVER_ABSENT.has(role))
          this.needed = Math.max(this.needed, (column as readonly [number, number])[0]);
        continue;
      }
      const at = positionOf(column, names);
      if (at === ABSENT) absent.push(String(column));
      this.index[role] = at;
      this.needed = Math.max(this.needed, at + 1);
    }
    if (this.map.skipRows && !this.fixed) {
      this.skipIndex = positionOf(this.map.skipRows.column, names);
      if (this.skipIndex === ABSENT) absent.push(String(this.map.skipRows.column));
      this.needed = Math.max(this.needed, this.skipIndex + 1);
    }
    if (absent.length === 0) return;
    throw new InputError(
      t`${this.fileName}, line ${line}: the column map ${this.map.id} wants the columns ${absent.join(', ')}, which the header (${header.slice(0, 8).join(', ')}) doesn't have.`,
    );
  }
}

/** Index from 0 of a column, -1 when the header doesn't have it. */
function positionOf(column: Column, names: readonly string[]): number {
  if (typeof column === 'string') return names.indexOf(column.toLowerCase());
  if (typeof column !== 'number') return ABSENT;
  return names.length > 0 && column > names.length ? ABSENT : column - 1;
}
