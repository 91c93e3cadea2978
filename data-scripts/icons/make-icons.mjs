/*
 * Draws the PNG icons of the installed page from web/public/favicon.svg: `node data-scripts/icons/make-icons.mjs`, with CHROMIUM
 * naming a Chromium where it isn't /usr/bin/chromium. To be run again when the drawing changes; its output is committed.
 */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

import { chromium } from 'playwright-core';

const PUBLIC = fileURLToPath(new URL('../../web/public/', import.meta.url));
const PAPER = '#faf7f0';

/** A maskable icon may be cut to a circle of four fifths of its width: the drawing stays within, on a ground without edges. */
const ICONS = [
  { name: 'icon-192.png', size: 192, drawing: 1, ground: 'transparent' },
  { name: 'icon-512.png', size: 512, drawing: 1, ground: 'transparent' },
  { name: 'icon-maskable-512.png', size: 512, drawing: 0.72, ground: PAPER },
];

const svg = await readFile(`${PUBLIC}favicon.svg`, 'utf8');
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
try {
  const page = await browser.newPage({ colorScheme: 'light' });
  for (const { name, size, drawing, ground } of ICONS) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(
      `<style>html, body { margin: 0; background: ${ground}; } body { display: grid; place-items: center; height: 100vh; }
       svg { width: ${drawing * 100}vw; }</style>${svg}`,
    );
    await page.screenshot({ path: PUBLIC + name, omitBackground: true });
  }
} finally {
  await browser.close();
}
