import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

import { inject } from 'vitest';

import type { Assessment } from '../../analysis/answer/assessment.ts';

/** Folder of the demo pack that the page shows. */
export const packFolder = (): string => `${inject('packsFolder')}/sallowmere`;

/** What `assess` says of the demo pack, read from its JSON: `--postcode`, `SC 123`, `--life` and the like are `options`. */
export async function commandAnswer<T = Assessment>(...options: string[]): Promise<T> {
  const command = ['data-scripts/entry/run.mjs', 'assess', '--pack', packFolder(), ...options, '--json'];
  const { stdout } = await promisify(execFile)(process.execPath, command, { maxBuffer: 64e6 });
  return JSON.parse(stdout) as T;
}
