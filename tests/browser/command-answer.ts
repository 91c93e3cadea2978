import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';

import { inject } from 'vitest';

import type { Assessment } from '../../analysis/answer/assessment.ts';

/** Folder of the demo pack that the page shows. */
export const packFolder = (): string => `${inject('packsFolder')}/sallowmere`;

/** The pack's first town, which the page opens with. */
export async function firstTown(): Promise<{ name: string; lat: number; lon: number }> {
  const { towns } = JSON.parse(await readFile(`${packFolder()}/places.json`, 'utf8')) as {
    towns: { name: string; lat: number; lon: number; rank: number }[];
  };
  return [...towns].sort((a, b) => a.rank - b.rank)[0];
}

/** What was asked in this file already: each question costs a process with an engine of its own. */
const asked = new Map<string, Promise<unknown>>();

/** What `assess` says of the demo pack, read from its JSON: `--postcode`, `SC 123`, `--life` and the like are `options`. */
export function commandAnswer<T = Assessment>(...options: string[]): Promise<T> {
  const key = options.join('\n');
  const answer = asked.get(key) ?? ask(options);
  asked.set(key, answer);
  return answer as Promise<T>;
}

async function ask(options: readonly string[]): Promise<unknown> {
  const command = ['data-scripts/entry/run.mjs', 'assess', '--pack', packFolder(), ...options, '--json'];
  const { stdout } = await promisify(execFile)(process.execPath, command, { maxBuffer: 64e6 });
  return JSON.parse(stdout) as unknown;
}
