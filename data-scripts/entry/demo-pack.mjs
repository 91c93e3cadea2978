import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

import { runChild } from './child.mjs';
import { contentHash } from './content-hash.mjs';
import { EntryError, ROOT } from './project.mjs';

/** Name of the demo region's folder among the packs. */
export const DEMO = 'sallowmere';

const INPUTS = [
  'analysis',
  'data-scripts/demo',
  'data-scripts/build',
  'data-scripts/commands',
  'data-scripts/pack',
  'package-lock.json',
];

/**
 * Sees to it that `packs` holds at least one pack and the list of them: the demo region is built where there is none,
 * or where it was built here from sources that have changed since. Packs of others are left as they are.
 */
export async function ensurePacks(packs, { limitS } = {}) {
  mkdirSync(packs, { recursive: true });
  const stamp = join(packs, `.${DEMO}-inputs`);
  const inputs = contentHash(INPUTS);
  const present = packNames(packs);
  const stale = present.includes(DEMO) && existsSync(stamp) && readFileSync(stamp, 'utf8') !== inputs;
  const build = present.length === 0 || stale;
  if (build) {
    console.error(`Building the demo region in ${packs} …`);
    await records(['demo', '--out', join(packs, DEMO)], limitS);
    writeFileSync(stamp, inputs);
  }
  if (build || !existsSync(join(packs, 'index.json'))) await records(['index', packs], limitS);
}

/** Folders that are packs. */
function packNames(packs) {
  return readdirSync(packs).filter((name) => existsSync(join(packs, name, 'pack.json')));
}

async function records(args, limitS) {
  const { code } = await runChild(
    process.execPath,
    [join(ROOT, 'data-scripts/entry/run.mjs'), 'records', ...args],
    { stdout: 'stderr', limitS },
  );
  if (code !== 0) {
    throw new EntryError(`"records ${args[0]}" failed, so there is no pack to show; its message is above.`);
  }
}
