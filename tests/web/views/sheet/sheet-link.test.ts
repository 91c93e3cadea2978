import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';

import { READY_YARDS } from '../../../../analysis/spot/ready-yards.ts';
import { writeYardText } from '../../../../analysis/spot/yard-text.ts';
import { readAddress, writeAddress } from '../../../../web/state/address.ts';
import type { Chosen } from '../../../../web/state/chosen.ts';
import { unfoldQuery } from '../../../../web/state/short-address.ts';
import {
  codeOf,
  codeSideMm,
  LINK_BYTES_MAX,
  MODULE_MIN_MM,
  QUIET_MODULES,
  sheetLink,
} from '../../../../web/views/sheet/sheet-link.ts';

const BASE = 'https://winters.example.org/citrus/';
/** Draws the path as print would, `px` a module, and reads it back. */
function scanned({ modules, path }: { modules: number; path: string }, px = 4): string | undefined {
  const side = (modules + 2 * QUIET_MODULES) * px;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y, length] of path.matchAll(/M(\d+),(\d+)h(\d+)v1/g))
    for (let dx = 0; dx < Number(length) * px; dx++)
      for (let dy = 0; dy < px; dy++) {
        const at = (Number(y) + QUIET_MODULES) * px + dy;
        const across = (Number(x) + QUIET_MODULES) * px + dx;
        data.fill(0, (at * side + across) * 4, (at * side + across) * 4 + 3);
      }
  return jsQR(data, side, side)?.data;
}

const restored = async (url: string): Promise<Chosen> => {
  const reading = readAddress(await unfoldQuery(new URL(url).search));
  expect(reading.ignored).toEqual([]);
  return reading.chosen;
};

const CHOSEN: Chosen = {
  pack: 'sallowmere',
  place: { by: 'postcode', code: 'SC 117', elevationM: 40 },
  ageYears: 3,
  condition: 'average',
  container: true,
  level: 'leaf',
  years: 12,
  type: 'satsuma_owari',
  unit: 'C',
  spot: 'sun-wall',
  cover: 'cloth-heavy,tied,lights,lights-confirmed',
  sheet: 'satsuma_owari,meyer_lemon.a4',
};

/** Text that no packing makes shorter. */
function yardNoise(length: number): string {
  let state = 7;
  const letter = (): string =>
    'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789'[
      (state = (state * 48271) % 2147483647) % 62
    ];
  return Array.from({ length }, letter).join('');
}

describe('the code on the sheet', () => {
  it('is read back to a link that restores every choice', async () => {
    const link = await sheetLink(CHOSEN, BASE);
    expect(link.leftOut).toBe('');
    expect(scanned(link.code!)).toBe(link.url);
    expect(await restored(link.url)).toEqual(CHOSEN);
  });

  it('stays in plain words where folding would not make it shorter', async () => {
    for (const chosen of [{}, { type: 'yuzu' }, { place: CHOSEN.place, type: 'yuzu' }] satisfies Chosen[]) {
      const { url } = await sheetLink(chosen, BASE);
      expect(url).toBe(BASE + writeAddress(chosen));
      expect(await restored(url)).toEqual(chosen);
    }
    const drawn: Chosen = { ...CHOSEN, yard: 'ab'.repeat(300) };
    expect((await sheetLink(drawn, BASE)).url.length).toBeLessThan((BASE + writeAddress(drawn)).length);
  });

  it('holds each yard that comes ready made, with the tree in it', async () => {
    for (const { yard } of READY_YARDS) {
      const chosen: Chosen = { ...CHOSEN, spot: 'yard:4,3.5', yard: writeYardText(yard) };
      const link = await sheetLink(chosen, BASE);
      expect(new TextEncoder().encode(link.url).length, yard.name).toBeLessThanOrEqual(LINK_BYTES_MAX);
      expect(link.leftOut, yard.name).toBe('');
      expect(await restored(link.url)).toEqual(chosen);
      expect(scanned(link.code!)).toBe(link.url);
    }
  });

  it('leaves out a yard that is too much, and says so', async () => {
    const noise = yardNoise(1500);
    const link = await sheetLink({ ...CHOSEN, spot: 'yard:4,3.5', yard: noise }, BASE);
    expect(link.leftOut).toMatch(/yard/);
    const { spot: _, ...rest } = CHOSEN;
    expect(await restored(link.url)).toEqual(rest);
    const named = await sheetLink({ ...CHOSEN, yard: noise }, BASE);
    expect(await restored(named.url)).toEqual(CHOSEN);
    const own = await sheetLink({ ...CHOSEN, yard: noise, measured: noise.slice(1) }, BASE);
    expect(own.leftOut).toMatch(/own readings/);
    expect(await restored(own.url)).toEqual(CHOSEN);
  });

  it('has no code where nothing helps, rather than one that no phone reads', async () => {
    const link = await sheetLink(CHOSEN, `https://example.org/${'long/'.repeat(100)}`);
    expect(link.code).toBeNull();
    expect(link.leftOut).not.toBe('');
  });

  it('never grows past what fits on the sheet, with modules of 0.4 mm or more', () => {
    // ISO/IEC 18004, table 7: 450 bytes in 16-M, 458 in 14-L, 718 in 18-L.
    const sizes = [40, 200, 450, 451, LINK_BYTES_MAX].map((bytes) => codeOf('x'.repeat(bytes)).modules);
    expect(sizes.slice(2)).toEqual([81, 73, 89]);
    expect(() => codeOf('x'.repeat(LINK_BYTES_MAX + 1))).toThrow();
    for (const modules of sizes) {
      const sideMm = codeSideMm(modules);
      expect(sideMm).toBeLessThanOrEqual(39);
      const moduleMm = sideMm / (modules + 2 * QUIET_MODULES);
      expect(moduleMm).toBeGreaterThanOrEqual(MODULE_MIN_MM - 1e-9);
      // Larger ones would only take room.
      expect(moduleMm).toBeLessThanOrEqual(0.5 + 1e-9);
    }
  });
});
