/** A run of whole lines and the number of its first line, counted from 1. */
export interface LineBlock {
  readonly text: string;
  readonly firstLine: number;
  /** Whether the text ends without a line end: the file's last line, perhaps cut short. */
  readonly unfinished: boolean;
}

/**
 * Chunks of text to blocks of whole lines. Carriage returns stay (readers trim them); a file with bare carriage
 * returns only (old spreadsheets) has them turned into line feeds.
 */
export async function* lineBlocks(chunks: AsyncIterable<string>): AsyncGenerator<LineBlock, void, undefined> {
  let carry: string[] = [];
  let firstLine = 1;
  for await (const chunk of chunks) {
    const end = chunk.lastIndexOf('\n') + 1;
    if (end === 0) {
      carry.push(chunk);
      continue;
    }
    carry.push(chunk.slice(0, end));
    const text = carry.join('');
    carry = end < chunk.length ? [chunk.slice(end)] : [];
    yield { text, firstLine, unfinished: false };
    firstLine += countLines(text);
  }
  const rest = carry.join('');
  if (rest.length === 0) return;
  const bare = firstLine === 1 && rest.includes('\r');
  yield { text: bare ? rest.replaceAll('\r', '\n') : rest, firstLine, unfinished: true };
}

function countLines(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** A reader of lines in place: from `from` to before `to` of `text`, without the line end. */
export type LineReader = (text: string, from: number, to: number, line: number, unfinished: boolean) => void;

/** Gives every line of a block to a reader, without making a string of it. */
export function eachLine(block: LineBlock, read: LineReader): void {
  const { text } = block;
  let line = block.firstLine;
  for (let from = 0; from < text.length; line += 1) {
    const feed = text.indexOf('\n', from);
    const end = feed === -1 ? text.length : feed;
    const to = end > from && text.charCodeAt(end - 1) === 13 ? end - 1 : end;
    read(text, from, to, line, feed === -1);
    from = end + 1;
  }
}
