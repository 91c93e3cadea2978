import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';

import { expectFitsPhone, expectNothingFound } from './axe.ts';
import { launchChromium } from './chromium.ts';
import { TEST_MS } from './patience.ts';
import { siteAddress, startVisit, untilAnswered } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

async function openDesk(page: Page): Promise<{ readonly desk: Locator; readonly box: Locator }> {
  await page.getByRole('navigation').getByRole('link', { name: 'Desk', exact: true }).click();
  const desk = page.getByRole('region', { name: 'Desk', exact: true });
  const box = desk.getByRole('search').getByRole('textbox');
  await box.waitFor({ timeout: 20_000 });
  return { desk, box };
}

/** All kinds of a group, `[]` where the group isn't shown. */
async function kindsIn(desk: Locator, group: string): Promise<string[]> {
  const region = desk.getByRole('region', { name: group, exact: true });
  const more = region.getByRole('button', { name: /^Show (all|the figures)/ });
  if ((await more.count()) > 0) await more.click();
  return region.getByRole('rowheader').getByRole('button').allTextContents();
}

/** Waits until the counter's answer stands, then tells which kinds are told not to be for here or for a pot at most. */
async function settled(desk: Locator): Promise<void> {
  await expect.poll(() => desk.locator('[aria-busy="true"], ol.stale').count(), { timeout: 20_000 }).toBe(0);
}

it(
  'a postcode and Enter show the groups; an answer moves kinds and is undone; customers stay until cleared; stock has one bad row',
  async () => {
    const visit = await startVisit(browser, { bypassCSP: true });
    const { page } = visit;
    await page.goto(siteAddress());
    await untilAnswered(page);
    const { desk, box } = await openDesk(page);
    // Whoever comes by the link can type or scan at once.
    expect(await box.evaluate((element) => element === document.activeElement)).toBe(true);

    await page.keyboard.type('SC 999');
    await page.keyboard.press('Enter');
    const nearest = desk.getByRole('list', { name: 'Nearest codes' }).getByRole('button');
    expect(await nearest.count()).toBeGreaterThan(1);
    // The answer of the place before is not taken for the one that was typed.
    await desk.getByText(/^What follows is still /).waitFor();
    await box.fill('sc120');
    await page.keyboard.press('Enter');
    const heading = desk.getByRole('heading', { name: /^SC 120 / });
    await heading.waitFor();
    await settled(desk);
    expect(await desk.getByText(/^What follows is still /).count()).toBe(0);
    expect(new URL(page.url()).searchParams.get('postcode')).toBe('SC 120');
    const groups = ['Plant it out', 'Plant it with a plan', 'In a pot, or not here', 'Not here'];
    // One look first: the first of each group with their figures, all others by their names.
    const firsts = await desk.getByRole('rowheader').count();
    expect(firsts).toBeGreaterThan(6);
    expect(firsts).toBeLessThan(22);
    const before = await Promise.all(groups.map((group) => kindsIn(desk, group)));
    // All kinds but the three rootstocks, each once.
    expect(new Set(before.flat()).size).toBe(34);
    expect(before.flat()).toHaveLength(34);
    expect(before[1].length).toBeGreaterThan(0);

    // Nobody at home: what needs a cover at night is not for here any more; nothing else is told on the button.
    const home = desk.getByRole('group', { name: /^Is somebody at home/ });
    const told = Number(/moves (\d+) kinds/.exec(await home.innerText())?.[1]);
    await home.getByRole('button', { name: 'No' }).press('Enter');
    await expect.poll(async () => (await kindsIn(desk, 'Not here')).length).toBeGreaterThan(0);
    await settled(desk);
    expect((await kindsIn(desk, 'Not here')).length).toBe(told);
    expect(new URL(page.url()).searchParams.get('counter')).toBe('home-no');
    // Back takes an answer back too, and forward gives it again.
    await page.goBack();
    expect(new URL(page.url()).searchParams.get('counter')).toBeNull();
    await page.goForward();
    await desk.getByRole('button', { name: /^Undo Nobody at home/ }).press('Enter');
    await expect.poll(async () => (await kindsIn(desk, 'Not here')).length).toBe(before[3].length);

    // A kind opened tells its sentence, and is remembered as looked at.
    const [kind] = before[1];
    await desk.getByRole('rowheader').getByRole('button', { name: kind, exact: true }).press('Enter');
    await desk.getByText(`${kind}: plant it with a plan at SC 120`).waitFor();
    await desk.getByRole('button', { name: `Put ${kind} on the sheet` }).click();
    await desk.getByRole('button', { name: `Take ${kind} off the sheet` }).waitFor();
    expect(new URL(page.url()).searchParams.get('sheet')).toMatch(/^[a-z_]+$/);

    // Stock: one line of three cannot be taken.
    await desk.getByLabel('Open a list (CSV)').setInputFiles({
      name: 'stock.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('Edad;Nombre;Maceta\n2;Limón Meyer;C-20\n3;Plum;C-10\n;Satsuma;=1+1\n'),
    });
    await desk.getByText('Line 3: “Plum” is no type of the catalogue.').waitFor();
    await desk.getByRole('radio', { name: 'Our stock' }).check({ force: true });
    await expect
      .poll(async () => (await Promise.all(groups.map((group) => kindsIn(desk, group)))).flat().sort())
      .toEqual(['Meyer lemon', 'Satsuma mandarin, Owari type']);
    await settled(desk);
    expect(
      await desk.getByRole('rowheader').filter({ hasText: 'Meyer lemon' }).first().innerText(),
    ).toContain('C-20, 2 years old');
    // Edited by keyboard alone.
    await desk.getByRole('spinbutton', { name: 'Age of Meyer lemon, years' }).focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Tab');
    await desk.getByText('C-20, 3 years old').waitFor();
    await settled(desk);
    await expectFitsPhone(page);
    await expectNothingFound(page, 'the counter with stock', '#desk');
    await page.setViewportSize({ width: 1280, height: 900 });

    // The customers of this device are there after a reload, and gone once cleared.
    // The link of the desk itself opens the page there.
    await page.reload();
    const again = page.getByRole('region', { name: 'Desk', exact: true });
    const list = again.getByRole('list', { name: 'Last customers' });
    await list.waitFor();
    expect(await list.getByRole('listitem').count()).toBe(1);
    expect(await list.innerText()).toContain(kind);
    expect(
      await again.getByRole('table').filter({ hasText: 'lines in stock' }).getByRole('row').count(),
    ).toBe(3);
    await again.getByRole('button', { name: 'Clear this list' }).click();
    await again.getByText('No customer yet.').waitFor();
    expect(await page.evaluate(() => localStorage.getItem('desk-customers'))).toBeNull();
    expect(visit.complaints).toEqual([]);
    await visit.close();
  },
  TEST_MS,
);
