import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

import { ROOT } from './project.mjs';

/**
 * Sixteen hex digits that change when any file under `paths` changes (files or folders, relative to the project; a
 * path that isn't there counts as empty). Contents count, times don't: a fresh clone and an old checkout agree.
 */
export function contentHash(paths) {
  const hash = createHash('sha256');
  for (const path of paths) addTo(hash, path);
  return hash.digest('hex').slice(0, 16);
}

function addTo(hash, path) {
  const absolute = join(ROOT, path);
  if (!existsSync(absolute)) return;
  if (statSync(absolute).isDirectory()) {
    for (const name of readdirSync(absolute).sort()) addTo(hash, `${path}/${name}`);
  } else if (!path.endsWith('.md')) {
    hash.update(`${path}\n`).update(readFileSync(absolute)).update('\n');
  }
}
