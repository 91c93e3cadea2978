import { PassThrough } from 'node:stream';

import { expect, it } from 'vitest';

import { consoleProgress } from '../../../data-scripts/fetch/console-progress.ts';
import type { FetchEvent } from '../../../data-scripts/fetch/fetch-archive.ts';

const EVENTS: FetchEvent[] = [
  { kind: 'begin', file: 'lists/ghcnd-stations.txt' },
  { kind: 'bytes', file: 'lists/ghcnd-stations.txt', come: 1_200_000, total: 2_400_000 },
  { kind: 'end', file: 'lists/ghcnd-stations.txt', outcome: 'whole' },
  { kind: 'stations', count: 2, km: 40 },
  { kind: 'begin', file: 'A.csv', position: 1, count: 2 },
  { kind: 'again', file: 'A.csv', reason: 'the archive answered 503', waitMs: 500 },
  { kind: 'bytes', file: 'A.csv', come: 900_000, total: undefined },
  { kind: 'end', file: 'A.csv', outcome: 'unchanged' },
  { kind: 'begin', file: 'B.csv', position: 2, count: 2 },
  { kind: 'end', file: 'B.csv', outcome: 'missing' },
];

const SENTENCES = [
  'lists/ghcnd-stations.txt: fetched.',
  '2 stations within 40 km.',
  'A.csv: the archive answered 503; again in 0.5 s.',
  'A.csv: unchanged.',
  'B.csv: not in the archive, left out.',
];

function shown(terminal: boolean): string {
  const stream = Object.assign(new PassThrough(), terminal ? { isTTY: true, columns: 80 } : {});
  // cli-progress asks a terminal for these.
  Object.assign(stream, { cursorTo: () => true, clearLine: () => true, moveCursor: () => true });
  const progress = consoleProgress(stream);
  for (const event of EVENTS) progress.event(event);
  progress.stop();
  return String(stream.read());
}

it('says one plain line a file where there is no terminal', () => {
  expect(shown(false)).toBe(`${SENTENCES.join('\n')}\n`);
});

it('draws a bar on a terminal, and says the same sentences', () => {
  const text = shown(true);
  for (const sentence of SENTENCES) expect(text).toContain(sentence);
  expect(text).toContain('1/2 A.csv [');
  expect(text).toContain('\u001B[?25h');
});
