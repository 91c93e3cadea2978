import { readFile } from 'node:fs/promises';

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
import { commandAnswer, packFolder } from './command-answer.ts';

/** The type told about while none is chosen. */
const TYPE = 'satsuma_owari';
/** The first surface and the database's engine take seconds, more where the machine is busy. */
export const PATIENCE_MS = 90_000;
export const TEST_MS = 180_000;

/** Text with single spaces. */
export const plain = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** The pack's first town, which the page opens with. */
export async function firstTown(): Promise<{ name: string; lat: number; lon: number }> {
  const { towns } = JSON.parse(await readFile(`${packFolder()}/places.json`, 'utf8')) as {
    towns: { name: string; lat: number; lon: number; rank: number }[];
  };
  return [...towns].sort((a, b) => a.rank - b.rank)[0];
}

/** One type and level by the command, at the place the page opens with. */
export async function assessed(level: string, ...more: string[]): Promise<LevelAnswer> {
  const { lat, lon } = await firstTown();
  const asked = ['--at', `${lat},${lon}`, '--types', TYPE, '--level', level];
  const { types } = await commandAnswer(...asked, ...more);
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
      { timeout: 30_000, interval: 2000 },
    )
    .toBe(1);
  return part;
}

/** A figure said as "about 1 winter in N" or "1 in N" is the period, told to two figures. */
export function expectTold(text: string, period: number): void {
  const told = Number(/(?:about 1 winter in|^1 in) ([\d.,]+)/.exec(text)![1].replace(',', ''));
  expect(Math.abs(told / period - 1), text).toBeLessThan(0.06);
}
