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

/** As {@link launchChromium}, with a profile in a folder of its own: a page is installed, and keeps much, in none of the passing ones. */
export function launchProfile(folder: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, {
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: BROWSER_ARGUMENTS,
    viewport: { width: 1280, height: 900 },
    locale: 'en-US',
    reducedMotion: 'reduce',
  });
}

/** Starts the Chromium that `npm test` found or installed; the caller closes it. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: BROWSER_ARGUMENTS,
  });
}
