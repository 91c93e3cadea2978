import { fork, spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

type CommandName = 'assess' | 'records';

/** Runs a command of the project as a reader would, and waits for its end. */
export function command(name: CommandName, ...args: string[]): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['data-scripts/entry/run.mjs', name, ...args]);
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

/**
 * Runs the same commands in one process that stays: starting each anew, with its engine, takes longer than most of them.
 * The caller closes it. That a command run as a reader would run it does the same is tested where {@link command} is used.
 */
export class CommandHost {
  readonly #child: ChildProcess = fork(fileURLToPath(new URL('command-host.mjs', import.meta.url)), {
    execArgv: [],
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  readonly #waiting = new Map<number, { done: (outcome: Outcome) => void; fail: (error: Error) => void }>();
  #asked = 0;

  constructor() {
    this.#child.on('message', ({ id, ...outcome }: Outcome & { id: number }) => {
      this.#waiting.get(id)?.done(outcome);
      this.#waiting.delete(id);
    });
    this.#child.on('exit', (code) => {
      for (const { fail } of this.#waiting.values())
        fail(new Error(`The process of the commands ended with ${code}.`));
    });
  }

  /** As {@link command}. */
  readonly command = (name: CommandName, ...args: string[]): Promise<Outcome> =>
    new Promise((done, fail) => {
      const id = ++this.#asked;
      this.#waiting.set(id, { done, fail });
      this.#child.send({ id, name, args });
    });

  close(): void {
    this.#child.disconnect();
  }
}
