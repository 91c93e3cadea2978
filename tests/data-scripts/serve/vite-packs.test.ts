import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { expect, it } from 'vitest';
import { createServer } from 'vite';

import { servePacks } from '../../../data-scripts/serve/vite-packs.ts';

it('serves packs by ranges while developing, and nothing in the place of what is absent', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'dev-'));
  mkdirSync(join(folder, 'packs/here'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<title>page</title>');
  writeFileSync(join(folder, 'packs/here/records.duckdb'), 'database');
  const server = await createServer({
    root: folder,
    configFile: false,
    logLevel: 'silent',
    plugins: [servePacks(join(folder, 'packs'))],
    server: { port: 0, host: '127.0.0.1' },
    optimizeDeps: { noDiscovery: true },
  });
  try {
    await server.listen();
    const [address] = server.resolvedUrls?.local ?? [];
    const ranged = await fetch(`${address}packs/here/records.duckdb`, { headers: { Range: 'bytes=0-3' } });
    expect([ranged.status, await ranged.text()]).toEqual([206, 'data']);
    expect((await fetch(`${address}packs/here/absent.arrow`)).status).toBe(404);
    expect(await fetch(address).then((reply) => reply.text())).toContain('page');
  } finally {
    await server.close();
    rmSync(folder, { recursive: true });
  }
});
