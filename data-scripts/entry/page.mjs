import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { runTool } from './child.mjs';
import { contentHash } from './content-hash.mjs';
import { EntryError, ROOT } from './project.mjs';

/** Folder of the built page. */
export const PAGE = join(ROOT, 'dist');

const INPUTS = [
  'web',
  'analysis',
  'data-scripts/serve',
  'data-scripts/language',
  'data-scripts/build/us-postcodes.ts',
  'package-lock.json',
  'vite.config.ts',
  'svelte.config.js',
];

/** Hidden, so it is never served; written last, so a broken build has none. */
const STAMP = join(PAGE, '.inputs');

/** Builds the page when it is absent or its sources have changed since; results in whether it built. */
export async function ensurePage({ limitS } = {}) {
  const inputs = contentHash(INPUTS);
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === inputs) return false;
  console.error('Building the page …');
  const { code, output } = await runTool('vite', ['build', '--logLevel', 'warn'], {
    capture: true,
    env: { NO_COLOR: '1' },
    limitS,
  });
  if (code !== 0) {
    throw new EntryError(`The page could not be built; Vite says:\n${output.trim()}`);
  }
  writeFileSync(STAMP, inputs);
  return true;
}
