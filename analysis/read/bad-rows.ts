import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';

/** One reason why rows could not be read. */
export interface BadRowReason {
  readonly reason: string;
  readonly count: number;
  /** The first lines it was seen on, at most five. */
  readonly lines: readonly number[];
  /** What the first of them held. */
  readonly example: string;
}

const LINES_KEPT = 5;
/** A file in which more than this share of the rows can't be read is refused. */
const MOST_BAD_SHARE = 0.5;

/** Counts rows that can't be read, by reason; they never stop the rest of the file. */
export class BadRows {
  private readonly reasons = new Map<string, { count: number; lines: number[]; example: string }>();
  count = 0;

  /** Notes a bad row; `example` is the text at fault. */
  add(reason: string, line: number, example: string): void {
    this.count += 1;
    const known = this.reasons.get(reason);
    if (!known) {
      this.reasons.set(reason, { count: 1, lines: [line], example: shown(example) });
      return;
    }
    known.count += 1;
    if (known.lines.length < LINES_KEPT) known.lines.push(line);
  }

  list(): BadRowReason[] {
    return [...this.reasons].map(([reason, seen]) => ({ reason, ...seen }));
  }

  /** @throws {InputError} when hardly anything in the file could be read. */
  refuseIfMost(fileName: string, goodRows: number): void {
    const rows = this.count + goodRows;
    if (this.count === 0 || this.count <= rows * MOST_BAD_SHARE) return;
    const [first] = this.list().sort((a, b) => b.count - a.count);
    throw new InputError(
      t`${fileName}, line ${first!.lines[0]}: ${first!.reason} ("${first!.example}"); ${sayCount(this.count)} of ${sayCount(rows)} rows can't be read, more than half.`,
    );
  }
}

function shown(text: string): string {
  const clean = text.replace(/[^\x20-\x7e\u00a0-\uffff]/g, '?').trim();
  return clean.length > 60 ? `${clean.slice(0, 57)}...` : clean;
}
