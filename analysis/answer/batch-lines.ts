const QUOTE = 34;
/** A quoted cell that goes on for longer than this was never closed: its line is taken alone. */
const LONGEST_RECORD = 10_000;

/** A row of a table as it stands in its file: usually a line, several where a quoted cell holds line ends. */
export interface TextRecord {
  /** First line, from 1. */
  readonly line: number;
  readonly text: string;
}

/** The rows of a text, empty ones included, but none after the last line end. */
export function* textRecords(text: string, separator: string): Generator<TextRecord> {
  const separatorCode = separator.charCodeAt(0);
  let line = 1;
  for (let from = 0; from < text.length;) {
    const end = recordEnd(text, from, separatorCode);
    yield { line, text: text.slice(from, end) };
    for (let at = from; at < end; at++) if (isLineEnd(text, at)) line++;
    from = afterLineEnd(text, end);
    line++;
  }
}

/** Where the row that begins at `from` ends. */
function recordEnd(text: string, from: number, separator: number): number {
  let quoted = false;
  let fresh = true;
  let firstEnd = -1;
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) {
      if (!quoted) return at;
      if (firstEnd < 0) firstEnd = at;
    }
    if (quoted) {
      if (firstEnd >= 0 && at - from > LONGEST_RECORD) return firstEnd;
      if (code === QUOTE) {
        if (text.charCodeAt(at + 1) === QUOTE) at++;
        else quoted = false;
      }
    } else if (code === QUOTE && fresh) {
      quoted = true;
      fresh = false;
    } else if (code === separator) fresh = true;
    else if (code !== 32) fresh = false;
  }
  return quoted && firstEnd >= 0 ? firstEnd : text.length;
}

/** CR LF counts once, by its LF. */
function isLineEnd(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10);
}

function afterLineEnd(text: string, end: number): number {
  return text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? end + 2 : end + 1;
}
