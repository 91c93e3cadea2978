/** Where things are. The entry scripts run before anything is installed: they import Node's own modules only. */
import { fileURLToPath } from 'node:url';

/** The project's folder, without a slash at its end. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url)).replace(/[/\\]$/, '');

/** A fault that one sentence explains; entry scripts print the sentence and exit with 1. */
export class EntryError extends Error {}

/** Runs an entry script's `main`; a known fault is one sentence on stderr and exit code 1. */
export async function enter(main) {
  try {
    await main();
  } catch (error) {
    console.error(error instanceof EntryError ? error.message : error);
    process.exit(1);
  }
}

/**
 * Ends this process as SIGTERM would when the `npm` that started it has gone: a signal to npm reaches the shell
 * between the two, which ends without passing it on.
 */
export function endWithNpm() {
  if (!process.env.npm_lifecycle_event) return;
  const shell = process.ppid;
  setInterval(() => {
    if (process.ppid !== shell) process.kill(process.pid, 'SIGTERM');
  }, 500).unref();
}
