import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get, type IncomingMessage } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { CompressedFiles, encodingFor } from '../../../data-scripts/serve/compressed-files.ts';
import { serveSite, type Site } from '../../../data-scripts/serve/site-server.ts';

const LIST = JSON.stringify(Array.from({ length: 500 }, (_, i) => ({ id: `Z${i}`, name: `Invented ${i}` })));

let folder: string;
let site: Site;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'compressed-'));
  mkdirSync(join(folder, 'here'));
  for (const name of ['stations.json', 'n30w042.arrow', 'grid.bin', 'records.duckdb'])
    writeFileSync(join(folder, 'here', name), LIST);
  site = await serveSite({ page: folder, packs: folder });
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

function ask(
  name: string,
  headers: Record<string, string>,
): Promise<{ reply: IncomingMessage; body: Buffer }> {
  return new Promise((resolve, reject) => {
    get(`${site.url}packs/here/${name}`, { headers }, (reply) => {
      const chunks: Buffer[] = [];
      reply.on('data', (chunk: Buffer) => chunks.push(chunk));
      reply.on('end', () => resolve({ reply, body: Buffer.concat(chunks) }));
    }).on('error', reject);
  });
}

describe('the best encoding that a reader takes', () => {
  // RFC 9110, 12.5.3: a weight of 0 means "not acceptable".
  it.each([
    ['gzip, deflate, br', 'br'],
    ['gzip;q=1.0, br;q=0', 'gzip'],
    ['BR;q=0.5', 'br'],
    ['br ; q=0.000 , x-gzip', undefined],
    ['identity', undefined],
    ['brotli', undefined],
    ['', undefined],
    [undefined, undefined],
  ])('%j: %j', (accepted, expected) => expect(encodingFor(accepted)).toBe(expected));
});

describe('files of a pack', () => {
  it('that are read whole go compressed, with their plain type and a tag of their own', async () => {
    for (const name of ['stations.json', 'n30w042.arrow', 'grid.bin']) {
      const brotli = await ask(name, { 'Accept-Encoding': 'gzip, br' });
      expect(brotli.reply.headers['content-encoding']).toBe('br');
      expect(Number(brotli.reply.headers['content-length'])).toBe(brotli.body.length);
      expect(brotli.body.length).toBeLessThan(LIST.length / 4);
      expect(brotliDecompressSync(brotli.body).toString()).toBe(LIST);
      const gzip = await ask(name, { 'Accept-Encoding': 'gzip' });
      expect(gunzipSync(gzip.body).toString()).toBe(LIST);
      const plain = await ask(name, {});
      expect(plain.body.toString()).toBe(LIST);
      const replies = [brotli, gzip, plain].map(({ reply }) => reply.headers);
      expect(new Set(replies.map(({ etag }) => etag)).size).toBe(3);
      expect(new Set(replies.map((headers) => headers['content-type'])).size).toBe(1);
      for (const { vary } of replies) expect(vary).toBe('Accept-Encoding');
      const again = await ask(name, { 'Accept-Encoding': 'br', 'If-None-Match': replies[0].etag! });
      expect([again.reply.statusCode, again.body.length]).toEqual([304, 0]);
      // The tag of one encoding says nothing of another.
      const other = await ask(name, { 'Accept-Encoding': 'gzip', 'If-None-Match': replies[0].etag! });
      expect(other.reply.statusCode).toBe(200);
    }
  });

  it('are plain where a part is asked for', async () => {
    const { reply, body } = await ask('stations.json', { 'Accept-Encoding': 'br', Range: 'bytes=3-9' });
    expect([reply.statusCode, reply.headers['content-encoding']]).toEqual([206, undefined]);
    expect(body.toString()).toBe(LIST.slice(3, 10));
  });

  it('never go compressed when they are databases', async () => {
    for (const range of [{}, { Range: 'bytes=0-99' }] as Record<string, string>[]) {
      const { reply } = await ask('records.duckdb', { 'Accept-Encoding': 'gzip, br', ...range });
      expect(reply.headers['content-encoding']).toBeUndefined();
      expect(reply.headers.vary).toBeUndefined();
      expect(reply.headers['accept-ranges']).toBe('bytes');
    }
  });

  it('are compressed anew when they have changed', async () => {
    await ask('stations.json', { 'Accept-Encoding': 'br' });
    const changed = LIST.replaceAll('Invented', 'Renamed');
    writeFileSync(join(folder, 'here/stations.json'), changed);
    const { body } = await ask('stations.json', { 'Accept-Encoding': 'br' });
    expect(brotliDecompressSync(body).toString()).toBe(changed);
  });
});

it('lets go of the copies longest unused', async () => {
  const file = join(folder, 'here/n30w042.arrow');
  const { length } = await new CompressedFiles().get(file, 'a', 'br');
  const copies = new CompressedFiles(2.5 * length);
  const settled = () => new Promise((resolve) => setImmediate(resolve));
  const [a, b] = [await copies.get(file, 'a', 'br'), await copies.get(file, 'b', 'br')];
  expect(await copies.get(file, 'a', 'br')).toBe(a);
  await copies.get(file, 'c', 'br');
  await settled();
  expect(await copies.get(file, 'a', 'br')).toBe(a);
  expect(await copies.get(file, 'b', 'br')).not.toBe(b);
});

it('keeps no more copies than it is told, and forgets a file that could not be read', async () => {
  const copies = new CompressedFiles(150);
  const file = join(folder, 'here/n30w042.arrow');
  const copy = await copies.get(file, 'a', 'br');
  expect(copy.length).toBeGreaterThan(150);
  await Promise.all([copies.get(file, 'b', 'br'), copies.get(file, 'c', 'br')]);
  await new Promise((settled) => setImmediate(settled));
  expect(await copies.get(file, 'a', 'br')).not.toBe(copy);
  const missing = join(folder, 'here/late.json');
  await expect(copies.get(missing, 'a', 'gzip')).rejects.toMatchObject({ code: 'ENOENT' });
  writeFileSync(missing, LIST);
  expect(gunzipSync(await copies.get(missing, 'a', 'gzip')).toString()).toBe(LIST);
});
