import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';

import { expect, it } from 'vitest';

import { precompress } from '../../../data-scripts/serve/precompress.ts';

it('writes both copies beside what is worth it, and nothing beside the rest', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'precompress-'));
  const long = 'export const words = "sustained cold";\n'.repeat(200);
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'assets/page.js'), long);
  writeFileSync(join(folder, 'tiny.js'), '1');
  writeFileSync(join(folder, 'face.woff2'), Buffer.alloc(5000));
  expect(await precompress(folder)).toBe(1);
  expect(readdirSync(folder, { recursive: true }).map(String).sort()).toEqual([
    'assets',
    'assets/page.js',
    'assets/page.js.br',
    'assets/page.js.gz',
    'face.woff2',
    'tiny.js',
  ]);
  expect(brotliDecompressSync(readFileSync(join(folder, 'assets/page.js.br'))).toString()).toBe(long);
  expect(gunzipSync(readFileSync(join(folder, 'assets/page.js.gz'))).toString()).toBe(long);
  rmSync(folder, { recursive: true });
});
