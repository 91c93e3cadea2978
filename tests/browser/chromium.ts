import type { Browser, BrowserContext } from 'playwright-core';
import { chromium } from 'playwright-core';

/**
 * Software rendering, the page's own without the graphics layer (a sixth faster, and the map still has its WebGL), and none
 * of the browser's own traffic.
 */
export const BROWSER_ARGUMENTS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-gpu',
  '--enable-unsafe-swiftshader',
];

/** The Chromium that `npm test` found or installed. */
const EXECUTABLE = process.env.CHROMIUM || '/usr/bin/chromium';

/**
 * As {@link launchChromium}, with a profile in a folder of its own: a page is installed, and keeps much, in none of the
 * passing ones.
 */
export function launchProfile(
  folder: string,
  options: Parameters<typeof chromium.launchPersistentContext>[1] = {},
): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, {
    executablePath: EXECUTABLE,
    args: BROWSER_ARGUMENTS,
    viewport: { width: 1280, height: 900 },
    locale: 'en-US',
    reducedMotion: 'reduce',
    ...options,
  });
}

/** Starts that Chromium; the caller closes it. `more`: further arguments. */
export function launchChromium(...more: string[]): Promise<Browser> {
  return chromium.launch({ executablePath: EXECUTABLE, args: [...BROWSER_ARGUMENTS, ...more] });
}
