import { accessSync, constants, existsSync } from 'node:fs';

import { runChild } from './child.mjs';
import { EntryError } from './project.mjs';

const DEBIAN = '/usr/bin/chromium';
const PACKAGES = ['chromium', 'fonts-dejavu-core'];
const HELP = 'set CHROMIUM to the path of a Chromium';

/**
 * Path of a Chromium that starts: the one of CHROMIUM, Debian's, or Debian's installed now by `apt-get` (as root or
 * with `sudo -n`). Throws the sentence that says what is missing.
 */
export async function ensureChromium() {
  const given = process.env.CHROMIUM;
  if (given) {
    if (!isProgram(given)) throw new EntryError(`CHROMIUM is "${given}", which is not a program.`);
    return given;
  }
  if (!isProgram(DEBIAN)) await installDebian();
  return DEBIAN;
}

async function installDebian() {
  if (!existsSync('/usr/bin/apt-get')) {
    throw new EntryError(`The browser tests need Chromium and there is no apt-get to install it: ${HELP}.`);
  }
  const prefix = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  console.error('Installing Chromium (apt-get) …');
  for (const args of [['update'], ['install', '-y', '--no-install-recommends', ...PACKAGES]]) {
    const [program, ...rest] = [...prefix, 'apt-get', '-qq', ...args];
    const { code, output } = await runChild(program, rest, {
      capture: true,
      env: { DEBIAN_FRONTEND: 'noninteractive' },
      limitS: 600,
    });
    if (code !== 0) {
      const said = output.trim().split('\n').pop() || 'it could not be started';
      throw new EntryError(
        `The browser tests need Chromium and apt-get could not install it (${said}): ${HELP}.`,
      );
    }
  }
  if (!isProgram(DEBIAN)) throw new EntryError(`apt-get has installed no ${DEBIAN}: ${HELP}.`);
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
