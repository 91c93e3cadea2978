import type { Browser } from 'playwright-core';
import { chromium } from 'playwright-core';

/**
 * Software rendering, the page's own without the graphics layer (a sixth faster, and the map still has its WebGL), and none
 * of the browser's own traffic.
 */
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-gpu',
  '--enable-unsafe-swiftshader',
];

/** Starts the Chromium that `npm test` found or installed; the caller closes it. */
export function launchChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: process.env.CHROMIUM || '/usr/bin/chromium', args: ARGUMENTS });
}
