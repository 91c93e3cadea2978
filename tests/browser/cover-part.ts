import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

import type { LevelAnswer } from '../../analysis/answer/assessment.ts';
import { findSubject } from '../../analysis/answer/find-subject.ts';
import { limitC } from '../../analysis/answer/level-answer.ts';
import { PlaceHistories } from '../../analysis/answer/place-histories.ts';
import { coverGains } from '../../analysis/cover/cover-gains.ts';
import { coverNights, type CoverRecord } from '../../analysis/cover/cover-nights.ts';
import { findType } from '../../analysis/tree/catalogue.ts';
import { MATURE_TREE } from '../../analysis/tree/penalties.ts';
import { gainsAt } from '../../analysis/winter/gain-spread.ts';
import { NO_GAINS } from '../../analysis/winter/winter-minima.ts';
import { PackDatabase } from '../../data-scripts/pack/database.ts';
import { Pack } from '../../data-scripts/pack/open-pack.ts';
import { readPlaceNights } from '../../data-scripts/pack/place-nights.ts';
import { commandAnswer, firstTown, packFolder } from './command-answer.ts';

/** The type told about while none is chosen. */
const TYPE = 'satsuma_owari';

/** One type and level by the command, at the place the page opens with. */
export async function assessed(level: string, ...more: string[]): Promise<LevelAnswer> {
  const { lat, lon } = await firstTown();
  const { types } = await commandAnswer('--at', `${lat},${lon}`, '--types', TYPE, ...more);
  const [type] = types;
  return type.levels.find((entry) => entry.level === level)!;
}

/** The nights to cover at that place, counted in Node from the pack's own database. */
export async function nightsInNode(level: 'leaf' | 'wood', ids: readonly string[]): Promise<CoverRecord> {
  const pack = await Pack.open(packFolder());
  const { name, lat, lon } = await firstTown();
  const request = { by: 'point' as const, label: name, lat, lon, elevationM: null };
  const { subject, nightPlan } = await findSubject(pack, request, new PlaceHistories(pack));
  const database = await PackDatabase.open(`${packFolder()}/records.duckdb`);
  try {
    const nights = await readPlaceNights(database, nightPlan!);
    const type = findType(TYPE)!;
    return coverNights(nights, subject.winters, {
      hours: type.thresholds[level].hours,
      limitC: limitC({ type, level, tree: MATURE_TREE }),
      without: NO_GAINS,
      withCover: gainsAt(coverGains(ids)[level], 'centreC'),
    });
  } finally {
    database.close();
  }
}

/** Goes to the part about covers and waits for its table of measures. */
export async function openCover(page: Page): Promise<Locator> {
  const part = page.getByRole('region', { name: 'Cover', exact: true });
  // The parts above open on the way down and push this one on, so one jump may end short of it.
  await expect
    .poll(
      async () => {
        await page.getByRole('navigation').getByRole('link', { name: 'Cover', exact: true }).click();
        return part.getByRole('region', { name: 'Measures' }).count();
      },
      { timeout: 30_000, interval: 250 },
    )
    .toBe(1);
  return part;
}

/** A figure said as "about 1 winter in N" or "1 in N" is the period, told to two figures. */
export function expectTold(text: string, period: number): void {
  const told = Number(/(?:about 1 winter in|^1 in) ([\d.,]+)/.exec(text)![1].replace(',', ''));
  expect(Math.abs(told / period - 1), text).toBeLessThan(0.06);
}
