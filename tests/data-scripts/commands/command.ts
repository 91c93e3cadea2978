import { spawn } from 'node:child_process';

export interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a command of the project as a reader would, and waits for its end. */
export function command(name: 'assess' | 'records', ...args: string[]): Promise<Outcome> {
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
