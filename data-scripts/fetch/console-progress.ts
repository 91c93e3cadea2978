import type { WriteStream } from 'node:tty';

import cliProgress from 'cli-progress';

import type { FetchEvent } from './fetch-archive.ts';

/**
 * Shows a fetch on a terminal as a bar, elsewhere as a line a file. Use it on stderr: results go to stdout.
 * Call `stop` when the fetch has ended, well or not, so that the terminal is left as it was.
 */
export function consoleProgress(stream: NodeJS.WritableStream): {
  event(event: FetchEvent): void;
  stop(): void;
} {
  const bar = (stream as WriteStream).isTTY ? fileBar(stream) : undefined;
  const say = (sentence: string): void => {
    bar?.stop();
    stream.write(`${sentence}\n`);
  };
  const event = (event: FetchEvent): void => {
    if (event.kind === 'stations') say(`${event.count} stations within ${event.km} km.`);
    else if (event.kind === 'bytes') bar?.update(event.come, event.total);
    else if (event.kind === 'begin') bar?.start(nameOf(event));
    else if (event.kind === 'again')
      say(`${event.file}: ${event.reason}; again in ${event.waitMs / 1000} s.`);
    else say(`${event.file}: ${WORDS[event.outcome]}.`);
  };
  return { event, stop: () => bar?.stop() };
}

const WORDS = { whole: 'fetched', unchanged: 'unchanged', missing: 'not in the archive, left out' } as const;

function nameOf({ file, position, count }: Extract<FetchEvent, { kind: 'begin' }>): string {
  return position === undefined ? file : `${position}/${count} ${file}`;
}

/** A bar for one file at a time; it shows megabytes, and a total only once the archive has told it. */
function fileBar(stream: NodeJS.WritableStream) {
  const bar = new cliProgress.SingleBar(
    { stream, format: '{name} [{bar}] {come} MB', hideCursor: true, clearOnComplete: true },
    cliProgress.Presets.legacy,
  );
  let name = '';
  return {
    start(of: string) {
      name = of;
      bar.start(1, 0, { name, come: '0.0' });
    },
    update(come: number, total: number | undefined) {
      if (!bar.isActive) bar.start(total ?? 1, come, { name, come: megabytes(come) });
      if (total !== undefined) bar.setTotal(total);
      bar.update(total === undefined ? 0 : come, { name, come: megabytes(come) });
    },
    stop: () => bar.stop(),
  };
}

function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(1);
}
