import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

import { runChild } from './child.mjs';
import { EntryError, ROOT, enter } from './project.mjs';

/** Makes `node_modules` match `package-lock.json`, by `npm ci` when it doesn't. Talks on stderr only. */
export async function ensureInstalled() {
  checkNode();
  if (isInstalled()) return;
  console.error('Installing packages (npm ci) …');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const { code } = await runChild(npm, ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    stdout: 'stderr',
  });
  if (code !== 0) {
    throw new EntryError(
      'The packages could not be installed: "npm ci" failed; see its message above, then try again.',
    );
  }
}

/**
 * Whether each package of `package-lock.json` is installed in its version. npm writes its own list of what it
 * installed last of all, so an interrupted install has none. Packages for other machines may be missing.
 */
export function isInstalled(root = ROOT) {
  const listed = join(root, 'node_modules/.package-lock.json');
  if (!existsSync(listed)) return false;
  const installed = JSON.parse(readFileSync(listed, 'utf8')).packages;
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(wanted).every(([path, { version, integrity, optional, peer }]) => {
    if (path === '') return true;
    const found = installed[path];
    if (found === undefined) return Boolean(optional || peer);
    return found.version === version && (integrity === undefined || found.integrity === integrity);
  });
}

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    throw new EntryError(`Node ${process.versions.node} is too old: version 20.19 or newer is needed.`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await enter(ensureInstalled);
