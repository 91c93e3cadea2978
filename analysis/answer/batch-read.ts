import { sayCount, sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { degreesOf } from '../read/coordinates.ts';
import { TextFromBytes } from '../read/decode-text.ts';
import { Fields, numberAt } from '../read/fields.ts';
import { separatorOf } from '../read/recognise.ts';
import { InputError } from '../records/input-error.ts';
import { BATCH_LIMITS, type BadRow, type BatchAsk } from './batch.ts';
import { batchColumns, type BatchColumns, type BatchRole } from './batch-columns.ts';
import { textRecords } from './batch-lines.ts';

/** Heights of land, metres: the shore of the Dead Sea and the highest peak. */
const ELEVATION_M = { from: -450, to: 9000 } as const;
const M_PER_FOOT = 0.3048;
const LONGEST_LABEL = 120;
const LONGEST_SHOWN = 80;

/** What a file asks about. */
export interface BatchFile {
  readonly asks: readonly BatchAsk[];
  readonly bad: readonly BadRow[];
  readonly columns: BatchColumns;
}

/**
 * Reads a table of places: postcodes, or latitudes and longitudes with or without elevations (metres, or feet where the
 * name of the column says so), with or without a label and a customer's number, in any order, separated by commas,
 * semicolons or tabs; a comma may be the decimal mark where it isn't the separator. A row with both coordinates is that
 * point, else its postcode. A row that makes no sense is listed and doesn't stop the rest.
 * @throws InputError for a file that is too large, empty, or without a usable column
 */
export function readBatch(text: string, fileName: string): BatchFile {
  if (text.length > BATCH_LIMITS.bytes)
    throw new InputError(
      t`${fileName} has ${megabytes(text.length)} MB; at most ${megabytes(BATCH_LIMITS.bytes)} MB are read.`,
    );
  const whole = text.replace(/^\ufeff/, '').trimEnd();
  const header = headerLine(whole);
  if (header === null) throw new InputError(t`${fileName} is empty.`);
  const columns = batchColumns(header.text, header.separator ?? separatorOf(header.text), fileName);
  const rows = new RowsBeingRead(columns);
  for (const { line, text: row } of textRecords(whole.slice(header.end), columns.separator)) {
    rows.take(header.line + line, row);
    if (rows.count > BATCH_LIMITS.rows)
      throw new InputError(
        t`${fileName} has more than ${sayCount(BATCH_LIMITS.rows)} rows, the most that are answered at once.`,
      );
  }
  if (rows.count === 0) throw new InputError(t`${fileName} has no row under its names of columns.`);
  return { asks: rows.asks, bad: rows.bad, columns };
}

/** Bytes of a file as text: UTF-8 or Latin-1, or UTF-16 as spreadsheets also write it. */
export function batchText(bytes: Uint8Array): string {
  const wide =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : null;
  return wide ? new TextDecoder(wide).decode(bytes) : new TextFromBytes().decode(bytes, true);
}

interface HeaderLine {
  readonly text: string;
  /** Its line, from 1, and where the next one begins. */
  readonly line: number;
  readonly end: number;
  /** As a line `sep=;` before it says. */
  readonly separator: string | null;
}

/** The first line that isn't empty, a remark, or a spreadsheet's word on the separator; `null` when there is none. */
function headerLine(text: string): HeaderLine | null {
  let line = 1;
  let separator: string | null = null;
  for (let from = 0; from < text.length; line++) {
    const end = /\r\n|\r|\n|$/g;
    end.lastIndex = from;
    const found = end.exec(text)!;
    const row = text.slice(from, found.index);
    const next = found.index + found[0].length;
    const told = /^"?sep=([,;\t])"?$/i.exec(row);
    if (told) separator = told[1];
    else if (row.trim() !== '' && !row.startsWith('#')) return { text: row, line, end: next, separator };
    if (next === from) break;
    from = next;
  }
  return null;
}

class RowsBeingRead {
  readonly asks: BatchAsk[] = [];
  readonly bad: BadRow[] = [];
  readonly #fields: Fields;
  #row = '';

  constructor(private readonly columns: BatchColumns) {
    this.#fields = new Fields(columns.separator);
  }

  get count(): number {
    return this.asks.length + this.bad.length;
  }

  take(line: number, row: string): void {
    this.#row = row;
    this.#fields.split(row, 0, row.length, 1024);
    try {
      this.asks.push(this.#ask(line));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.bad.push({ line, reason: error.message, text: shown(row) });
    }
  }

  #ask(line: number): BatchAsk {
    if (this.#row.replaceAll(this.columns.separator, '').trim() === '')
      throw new InputError(t`the row is empty`);
    const [lat, lon] = [this.#degrees('lat'), this.#degrees('lon')];
    const code = this.#text('postcode');
    const elevationM = this.#elevation();
    const rest = { line, label: this.#text('label'), customer: this.#text('customer'), elevationM };
    if (lat !== null && lon !== null) return { ...rest, where: { by: 'point', lat, lon } };
    if (code !== '') return { ...rest, where: { by: 'postcode', code } };
    if (lat !== null) throw new InputError(t`the longitude is empty`);
    if (lon !== null) throw new InputError(t`the latitude is empty`);
    throw new InputError(
      this.columns.at.postcode === undefined
        ? t`no latitude and longitude`
        : t`no postcode and no coordinates`,
    );
  }

  #text(role: BatchRole): string {
    const at = this.columns.at[role];
    if (at === undefined) return '';
    const text = this.#fields.text(this.#row, at).replace(/\s+/g, ' ').trim();
    return text.length > LONGEST_LABEL ? `${text.slice(0, LONGEST_LABEL - 3)}...` : text;
  }

  #degrees(axis: 'lat' | 'lon'): number | null {
    const text = this.#text(axis);
    try {
      return degreesOf(text, axis, '');
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      throw new InputError(error.message.replace(/^: |\.$/g, ''));
    }
  }

  #elevation(): number | null {
    const inFeet = this.#text('elevationM') === '';
    const text = this.#text(inFeet ? 'elevationFt' : 'elevationM');
    if (text === '') return null;
    const value = numberAt(text, 0, text.length, text.includes(',') ? 44 : 46);
    if (Number.isNaN(value)) throw new InputError(t`elevation "${text}" is not a number`);
    const metres = inFeet ? value * M_PER_FOOT : value;
    if (metres < ELEVATION_M.from || metres > ELEVATION_M.to)
      throw new InputError(
        t`elevation ${text} is out of range: ${ELEVATION_M.from} to ${ELEVATION_M.to} m are possible`,
      );
    return metres;
  }
}

function megabytes(bytes: number): string {
  return sayFigure(bytes / 1e6, bytes % 1e6 === 0 ? 0 : 1);
}

function shown(row: string): string {
  const line = row.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST_SHOWN ? `${line.slice(0, LONGEST_SHOWN - 3)}...` : line;
}
