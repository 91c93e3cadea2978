import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { serveSite } from '../../data-scripts/serve/site-server.ts';
import type { BenchRow } from './bench-row.ts';

/** Chromium measures memory at once only when forced; else it waits for its next collection of garbage. */
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--no-first-run',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--enable-blink-features=ForceEagerMeasureMemory',
];
const PATIENCE_MS = 40_000;
const PAGE = 'dist';
const PACKS = '.cache/test-packs';

/** Memory of the built page with the demo pack, workers included; needs what `npm test` builds, and Chromium. */
export async function benchPage(): Promise<BenchRow[]> {
  const executablePath = process.env.CHROMIUM || '/usr/bin/chromium';
  const tasks = ['page: memory with the ranking shown', 'page: memory with the surface shown'];
  const rowOf = (task: string, measured: number | null, note: string): BenchRow => ({
    ...{ task, measured, unit: 'MB', budget: null, ratio: null, note },
  });
  const missing = [executablePath, `${PAGE}/index.html`, `${PACKS}/index.json`].find(
    (file) => !existsSync(file),
  );
  if (missing !== undefined) return tasks.map((task) => rowOf(task, null, `${missing} is absent`));
  const site = await serveSite({ page: PAGE, packs: PACKS });
  const browser = await chromium.launch({ executablePath, args: ARGUMENTS });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    page.setDefaultTimeout(PATIENCE_MS);
    // Memory is only told to a page that is isolated from other origins.
    await page.route('**/*', async (route) => {
      const response = await route.fetch();
      const headers = { ...response.headers(), 'cross-origin-embedder-policy': 'require-corp' };
      await route.fulfill({ response, headers });
    });
    await page.goto(site.url);
    const ranking = page.getByRole('region', { name: 'Ranking', exact: true });
    await ranking
      .getByRole('button', { name: /: .+ in / })
      .first()
      .waitFor();
    await page.waitForTimeout(1500);
    const first = await megabytes(page);
    await page.getByRole('application', { name: /^Map of \d+ stations/ }).waitFor();
    const shown = await page
      .getByText(/^Areas are estimated between stations/)
      .waitFor()
      .then(() => true)
      .catch(() => false);
    await page.waitForTimeout(1500);
    const second = shown ? await megabytes(page) : null;
    return [first, second].map((found, i) => {
      if (!found)
        return rowOf(tasks[i], null, `no surface within ${PATIENCE_MS / 1000} s: is the page built anew?`);
      const { bytes, workers } = found;
      return rowOf(
        tasks[i],
        bytes,
        `scripts, documents and workers (${workers.toFixed(0)} MB of it) as Chromium counts them; demo pack`,
      );
    });
  } finally {
    await browser.close();
    await site.close();
  }
}

async function megabytes(page: Page): Promise<{ bytes: number; workers: number }> {
  return page.evaluate(async () => {
    interface Measured {
      bytes: number;
      breakdown: { bytes: number; attribution: { scope: string }[] }[];
    }
    const measure = performance as unknown as { measureUserAgentSpecificMemory(): Promise<Measured> };
    const { bytes, breakdown } = await measure.measureUserAgentSpecificMemory();
    const ofWorkers = breakdown.filter(({ attribution }) =>
      attribution.some(({ scope }) => scope.includes('Worker')),
    );
    return { bytes: bytes / 1e6, workers: ofWorkers.reduce((sum, part) => sum + part.bytes, 0) / 1e6 };
  });
}
