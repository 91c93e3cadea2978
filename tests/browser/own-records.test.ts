import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { gzipSync } from 'node:zlib';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import type { Assessment } from '../../analysis/answer/assessment.ts';
import { launchChromium } from './chromium.ts';
import { dayFirstText, dlyText, INVENTED_STATIONS } from './own-files.ts';
import { expectRankingFigures } from './ranking-figures.ts';
import { openPart, siteAddress, startVisit, untilAnswered, type Visit } from './visit.ts';

const run = promisify(execFile);
let browser: Browser;
let visit: Visit;
let work: string;

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), 'citrus-winters-test-'));
  browser = await launchChromium();
  visit = await startVisit(browser);
});
afterAll(async () => {
  await browser?.close();
  await rm(work, { recursive: true, force: true });
});

/** Files in the browser's own storage whose path holds a text, with their bytes. */
const stored = (page: Page, text: string): Promise<string[]> =>
  page.evaluate(async (wanted) => {
    const found: string[] = [];
    const walk = async (folder: FileSystemDirectoryHandle, before: string): Promise<void> => {
      for await (const [name, handle] of folder.entries()) {
        if (handle.kind === 'directory') await walk(handle as FileSystemDirectoryHandle, `${before}${name}/`);
        else if (`${before}${name}`.includes(wanted)) found.push(`${before}${name}`);
      }
    };
    await walk(await navigator.storage.getDirectory(), '');
    return found;
  }, text);

async function bring(own: Locator, files: readonly string[]): Promise<void> {
  await own.locator('input[type=file]:not([webkitdirectory])').setInputFiles([...files]);
}

/** Drops files onto the area for them, as a hand does: a drop's files are there only while it is told. */
async function drop(page: Page, own: Locator, files: readonly string[]): Promise<void> {
  const contents = await Promise.all(
    files.map(async (file) => [path.basename(file), (await readFile(file)).toString('base64')] as const),
  );
  const dropped = await page.evaluateHandle((list) => {
    const transfer = new DataTransfer();
    for (const [name, text] of list)
      transfer.items.add(new File([Uint8Array.from(atob(text), (c) => c.charCodeAt(0))], name));
    return transfer;
  }, contents);
  await own
    .getByRole('group', { name: 'Station files or a pack folder' })
    .dispatchEvent('drop', { dataTransfer: dropped });
}

it('reads a .dly and a day-first table, answers as the command does from the same files, and forgets them again', async () => {
  const [east, west] = INVENTED_STATIONS;
  const dly = path.join(work, `${east.id}.dly.gz`);
  const table = path.join(work, `${west.id}.csv`);
  await writeFile(dly, gzipSync(dlyText(east)));
  await writeFile(table, dayFirstText(west));
  const list = path.join(work, 'list.csv');
  await writeFile(
    list,
    `id,name,lat,lon,elevation_m\n${INVENTED_STATIONS.map((s) => `${s.id},${s.name},${s.lat},${s.lon},${s.elevationM}\n`).join('')}`,
  );
  const pack = path.join(work, 'pack');
  const command = (...words: string[]): Promise<{ stdout: string }> =>
    run(process.execPath, ['data-scripts/entry/run.mjs', ...words], { maxBuffer: 64e6 });
  const built = command(
    'records',
    'build',
    '--out',
    pack,
    '--unit',
    'C',
    '--stations',
    list,
    dly,
    table,
  ).then(() => command('assess', '--pack', pack, '--station', east.id, '--json'));

  const { page } = visit;
  await page.goto(siteAddress('?unit=C&pack=own-nowhere'));
  await expect.poll(() => page.getByText('only the browser they were brought to has them').count()).toBe(1);
  const part = await openPart(page, 'Records', (records) =>
    records.getByRole('button', { name: 'Open the database' }),
  );
  const own = part.locator('.own');

  // No room: a sentence, and nothing half-kept.
  const devtools = await visit.context.newCDPSession(page);
  const { origin } = new URL(inject('siteUrl'));
  await drop(page, own, [dly]);
  await own.getByText(/days of one station/).waitFor();
  await bring(own, [table]);
  await own
    .getByRole('group', { name: `What ${west.id}.csv leaves open` })
    .getByRole('button', { name: '°C' })
    .click();
  for (const station of INVENTED_STATIONS) {
    const form = own.locator('form').filter({ hasText: `where station ${station.id} stands` });
    await form.getByLabel('Name').fill(station.name);
    await form.getByLabel('Latitude, ° north').fill(String(station.lat));
    await form.getByLabel('Longitude, ° east (west is minus)').fill(String(station.lon));
    await form.getByLabel('Height, m (may be left empty)').fill(String(station.elevationM));
    await form.getByRole('button', { name: 'It stands there' }).click();
    await form.waitFor({ state: 'detached' });
  }
  const found = await own.getByRole('row', { name: new RegExp(east.id) }).innerText();
  expect(found).toMatch(/61 complete winters/);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 10_000 });
  await own.getByRole('button', { name: 'Use them' }).click();
  await expect
    .poll(() => own.getByRole('alert').allInnerTexts(), { timeout: 20_000 })
    .toEqual([expect.stringMatching(/no room for .* it needs /)]);
  expect(await stored(page, 'own-')).toEqual([]);
  expect(await stored(page, 'gathering-')).toEqual([]);
  await devtools.send('Storage.overrideQuotaForOrigin', { origin });

  await own.getByLabel('Title').fill('Invented pair');
  const began = performance.now();
  await own.getByRole('button', { name: 'Use them' }).click();
  await own.getByText('“Invented pair” is kept in this browser and open.').waitFor({ timeout: 30_000 });
  await expect.poll(() => new URL(page.url()).search, { timeout: 20_000 }).toContain('pack=own-');
  const id = new URL(page.url()).searchParams.get('pack')!;
  await untilAnswered(page);
  const answeredMs = performance.now() - began;
  console.log(
    `Two stations of 62 years, from "Use them" to the answer: ${Math.round(answeredMs)} ms (polled).`,
  );
  // Loose on purpose: the machine may be busy with other tests.
  expect(answeredMs).toBeLessThan(30_000);

  // The same answer: the figures told on screen, then those of the pack's own files to the last digit.
  const { stdout } = await built;
  const expected = JSON.parse(stdout) as Assessment;
  await page.getByLabel('Show rootstocks too').check();
  await page.getByRole('region', { name: 'Ranking', exact: true }).getByText('The same as a table').click();
  let compared = 0;
  for (const level of ['fruit', 'wood'] as const)
    compared += await expectRankingFigures(page, level, expected, 'complete winters');
  expect(compared).toBeGreaterThan(20);

  // Its nights follow.
  await expect
    .poll(() => stored(page, `${id}/`), { timeout: 30_000 })
    .toContainEqual(expect.stringMatching(/records\.duckdb$/));
  await expect.poll(() => own.getByText('The nights are still being written.').count()).toBe(0);
  expect(await stored(page, 'unwritten/')).toEqual([]);
  expect(await stored(page, 'gathering-')).toEqual([]);
  const folder = path.join(work, 'from-page');
  await takeOut(page, id, folder);
  const { stdout: mine } = await command('assess', '--pack', folder, '--station', east.id, '--json');
  const got = JSON.parse(mine) as Assessment;
  const periods = (answer: Assessment): number[] =>
    answer.types.flatMap(({ levels }) =>
      levels.flatMap(({ counted, fitted, headline }) =>
        [counted.period, fitted?.period, fitted?.low, fitted?.high, headline.period].map(
          (period) => period ?? -1,
        ),
      ),
    );
  expect(periods(got)).toHaveLength(periods(expected).length);
  periods(expected).forEach((period, i) => expect(periods(got)[i]).toBeCloseTo(period, 9));

  // The nights are there for the reader's own SQL too.
  await part.getByRole('button', { name: 'Open the database' }).click();
  await part.getByText('The database is open.').waitFor({ state: 'attached', timeout: 20_000 });

  await own.getByRole('button', { name: 'Remove: Invented pair' }).click();
  await own.getByRole('button', { name: 'Remove', exact: true }).click();
  await own.getByText('“Invented pair” was removed from this browser.').waitFor();
  expect(await stored(page, id)).toEqual([]);
  expect(visit.complaints).toEqual([]);
}, 120_000);

/** Copies a kept pack's files out of the browser's storage into a folder. */
async function takeOut(page: Page, id: string, folder: string): Promise<void> {
  const { mkdir } = await import('node:fs/promises');
  const files = await page.evaluate(async (wanted) => {
    const found: [string, string][] = [];
    const walk = async (inside: FileSystemDirectoryHandle, before: string): Promise<void> => {
      for await (const [name, handle] of inside.entries()) {
        if (handle.kind === 'directory') await walk(handle as FileSystemDirectoryHandle, `${before}${name}/`);
        else if (before.includes(`${wanted}/files-`)) {
          const bytes = new Uint8Array(
            await (await (handle as FileSystemFileHandle).getFile()).arrayBuffer(),
          );
          let text = '';
          for (let at = 0; at < bytes.length; at += 32768)
            text += String.fromCharCode(...bytes.subarray(at, at + 32768));
          found.push([`${before}${name}`.replace(/^.*\/files-[^/]*\//, ''), btoa(text)]);
        }
      }
    };
    await walk(await navigator.storage.getDirectory(), '');
    return found;
  }, id);
  for (const [name, content] of files) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, Buffer.from(content, 'base64'));
  }
}
