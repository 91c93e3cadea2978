import cliProgress from 'cli-progress';

/** Shows a batch on stderr: a bar with the time left on a terminal, a line every tenth elsewhere. */
export function batchProgress(places: number): { more(count: number): void; stop(): void } {
  const bar = process.stderr.isTTY
    ? new cliProgress.SingleBar(
        {
          stream: process.stderr,
          format: 'answering [{bar}] {value} of {total} places, {eta_formatted} left',
          hideCursor: true,
        },
        cliProgress.Presets.legacy,
      )
    : null;
  bar?.start(places, 0);
  let done = 0;
  return {
    more(count) {
      const before = Math.floor((done / places) * 10);
      done += count;
      if (bar) bar.update(done);
      else if (Math.floor((done / places) * 10) > before)
        process.stderr.write(`answering: ${done} of ${places} places\n`);
    },
    stop: () => bar?.stop(),
  };
}
