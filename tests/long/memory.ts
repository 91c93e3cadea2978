import { readFile } from 'node:fs/promises';
import type { Browser, CDPSession, Page } from 'playwright-core';

/** Memory at one moment, after everything that can be let go has been. */
export interface MemorySample {
  /** Since the beginning, minutes. */
  readonly minute: number;
  /** JavaScript of the page itself, bytes. */
  readonly heap: number;
  /** Anonymous memory of the processes that run the page and its workers, bytes: their own, without files mapped in. */
  readonly resident: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** Measures the memory of a page of a browser started with `--js-flags=--expose-gc`. */
export class MemoryMeter {
  private constructor(
    private readonly whole: CDPSession,
    private readonly own: CDPSession,
    private readonly page: Page,
  ) {}

  static async of(browser: Browser, page: Page): Promise<MemoryMeter> {
    const own = await page.context().newCDPSession(page);
    await own.send('Performance.enable');
    return new MemoryMeter(await browser.newBrowserCDPSession(), own, page);
  }

  async sample(minute: number): Promise<MemorySample> {
    for (let pass = 0; pass < 2; pass++) {
      await this.own.send('HeapProfiler.collectGarbage');
      // Workers have heaps of their own.
      for (const worker of this.page.workers())
        await worker.evaluate(() => (globalThis as { gc?: () => void }).gc?.()).catch(() => {});
      await this.page.waitForTimeout(500);
    }
    const { usedSize } = await this.own.send('Runtime.getHeapUsage');
    const { metrics } = await this.own.send('Performance.getMetrics');
    const metric = (name: string): number => metrics.find((one) => one.name === name)?.value ?? NaN;
    const { processInfo } = await this.whole.send('SystemInfo.getProcessInfo');
    const renderers = processInfo.filter(({ type }) => type === 'renderer');
    const sizes = await Promise.all(renderers.map(({ id }) => anonymousBytes(id)));
    return {
      minute,
      heap: usedSize,
      resident: sizes.reduce((sum, bytes) => sum + bytes, 0),
      nodes: metric('Nodes'),
      listeners: metric('JSEventListeners'),
    };
  }
}

/** `RssAnon` of a process; 0 for one that has ended meanwhile. */
async function anonymousBytes(id: number): Promise<number> {
  const status = await readFile(`/proc/${id}/status`, 'utf8').catch(() => '');
  return Number(/^RssAnon:\s+(\d+) kB/m.exec(status)?.[1] ?? 0) * 1024;
}

/** Median of a quantity over samples of a span of minutes. */
export function medianOf(
  samples: readonly MemorySample[],
  [from, to]: readonly [number, number],
  quantity: 'heap' | 'resident',
): number {
  const values = samples
    .filter(({ minute }) => minute >= from && minute <= to)
    .map((sample) => sample[quantity])
    .sort((a, b) => a - b);
  if (values.length === 0) throw new Error(`no sample from minute ${from} to ${to}`);
  return values[Math.floor(values.length / 2)];
}
