import cliProgress from 'cli-progress';
import type { BuildProgress } from '../build/build-pack.ts';

/** Shows a build on stderr: a bar on a terminal, a line every tenth elsewhere. */
export function buildProgress(): BuildProgress & { stop(): void } {
  const bar = process.stderr.isTTY
    ? new cliProgress.SingleBar(
        { stream: process.stderr, format: '{phase} [{bar}] {percentage}% {detail}', hideCursor: true },
        cliProgress.Presets.legacy,
      )
    : null;
  bar?.start(100, 0, { phase: 'reading', detail: '' });
  let said = '';
  const show = (phase: string, share: number, detail: string) => {
    if (bar) return bar.update(Math.round(100 * share), { phase, detail });
    const tenth = `${phase} ${Math.floor(share * 10) * 10}%`;
    if (tenth !== said) process.stderr.write(`${tenth}\n`);
    said = tenth;
  };
  return {
    read: (bytes, total, file) => show('reading', total === 0 ? 1 : bytes / total, file),
    computed: (stations, total) => show('computing', stations / total, `${stations} of ${total} stations`),
    tell: (sentence) => process.stderr.write(`${bar ? '\n' : ''}${sentence}\n`),
    stop: () => bar?.stop(),
  };
}
