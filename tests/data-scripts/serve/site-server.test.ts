import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import type { IncomingHttpHeaders } from 'node:http';
import { get, request } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import { precompress } from '../../../data-scripts/serve/precompress.ts';
import type { Site } from '../../../data-scripts/serve/site-server.ts';
import { serveSite } from '../../../data-scripts/serve/site-server.ts';

const WASM = Buffer.alloc(50_000, 'wasm and again ');
const DATABASE = Buffer.from(Array.from({ length: 4096 }, (_, i) => i % 251));

let folder: string;
let site: Site;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'site-'));
  for (const path of ['dist/assets', 'packs/here', 'packs/.hidden'])
    mkdirSync(join(folder, path), { recursive: true });
  const files: [string, string | Buffer][] = [
    ['secret.txt', 'secret'],
    ['dist/index.html', '<!doctype html><title>page</title>'],
    ['dist/.inputs', 'secret'],
    ['dist/sw.js', '// the page’s worker'],
    ['dist/assets/work-abcd1234.js', '// a worker'],
    ['dist/assets/engine-abcd1234.wasm', WASM],
    ['packs/index.json', '[]'],
    ['packs/here/records.duckdb', DATABASE],
    ['packs/here/n30w042.arrow', 'arrow'],
    ['packs/.hidden/pack.json', 'secret'],
  ];
  for (const [path, content] of files) writeFileSync(join(folder, path), content);
  symlinkSync(join(folder, 'packs/here'), join(folder, 'packs/linked'));
  await precompress(join(folder, 'dist'));
  site = await serveSite({ page: join(folder, 'dist'), packs: join(folder, 'packs') });
});

afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

interface Reply {
  status: number;
  headers: IncomingHttpHeaders;
  body: Buffer;
}

/** Asks as plainly as possible: nothing is decoded, followed or normalised on the way. */
function ask(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Reply> {
  const { hostname, port } = new URL(site.url);
  return new Promise((resolve, reject) => {
    request({ hostname, port, path, headers, method }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(chunks) }),
      );
    })
      .on('error', reject)
      .end();
  });
}

describe('ranges, which the database reads its file by', () => {
  const path = '/packs/here/records.duckdb';

  it('answers a range with 206 and exactly those bytes', async () => {
    for (const [range, from, to] of [
      ['bytes=0-0', 0, 0],
      ['bytes=100-355', 100, 355],
      ['bytes=4000-', 4000, 4095],
      ['bytes=4000-9999', 4000, 4095],
    ] as const) {
      const { status, headers, body } = await ask(path, { Range: range, 'Accept-Encoding': 'gzip, br' });
      expect([status, headers['content-range']]).toEqual([206, `bytes ${from}-${to}/4096`]);
      expect(headers['content-length']).toBe(String(to - from + 1));
      expect(headers['content-encoding']).toBeUndefined();
      expect(body).toEqual(DATABASE.subarray(from, to + 1));
    }
  });

  it('answers HEAD with a range as the engine asks it', async () => {
    const { status, headers, body } = await ask(path, { Range: 'bytes=0-' }, 'HEAD');
    expect([status, headers['content-length'], headers['accept-ranges']]).toEqual([206, '4096', 'bytes']);
    expect(body).toHaveLength(0);
  });

  it('says 416 beyond the end, and sends the whole file for a range it does not understand', async () => {
    const beyond = await ask(path, { Range: 'bytes=4096-' });
    expect([beyond.status, beyond.headers['content-range']]).toEqual([416, 'bytes */4096']);
    for (const range of ['bytes=-100', 'bytes=0-1,5-6', 'bytes=9-3', 'lines=1-2', 'bytes=x-y']) {
      const { status, body } = await ask(path, { Range: range });
      expect([range, status, body.length]).toEqual([range, 200, 4096]);
    }
  });

  it('sends a range of the file a browser has parts of, and a changed file whole', async () => {
    // Chromium asks so for pieces of a file it knows that is older than a minute; a whole file each time would be gigabytes.
    const { headers } = await ask(path, { Range: 'bytes=0-0' });
    const known = await ask(path, { Range: 'bytes=1-2', 'If-Range': headers.etag as string });
    expect([known.status, known.body.length]).toEqual([206, 2]);
    for (const other of ['"other"', `W/${headers.etag as string}`, headers['last-modified'] as string])
      expect((await ask(path, { Range: 'bytes=1-2', 'If-Range': other })).status).toBe(200);
  });
});

/**
 * Nothing but the site's own files and what the page itself makes is let in, of whatever kind; scripts are the site's own
 * alone, and what a strict policy closes (W3C CSP 3) is closed. Whom the page may ask has a test of its own.
 */
function expectStrict(policy: string): void {
  const allowed = new Map(
    policy.split('; ').map((directive): [string, string[]] => {
      const [name, ...sources] = directive.split(' ');
      return [name!, sources];
    }),
  );
  for (const closed of ['object-src', 'base-uri', 'form-action', 'frame-ancestors'])
    expect(allowed.get(closed), closed).toEqual(["'none'"]);
  expect(allowed.get('script-src')).toEqual(["'self'", "'wasm-unsafe-eval'"]);
  const own = ["'self'", "'none'", 'data:', 'blob:', "'wasm-unsafe-eval'", "'unsafe-inline'"];
  for (const [name, sources] of allowed) {
    if (name === 'connect-src') continue;
    expect(
      sources.filter((source) => !own.includes(source)),
      name,
    ).toEqual([]);
    expect(sources.includes("'unsafe-inline'"), name).toBe(name === 'style-src');
  }
}

describe('what a file is sent as', () => {
  it('gives types and caching by kind', async () => {
    const of = async (path: string) => {
      const { status, headers } = await ask(path);
      return [status, headers['content-type'], headers['cache-control']];
    };
    const forever = 'public, max-age=31536000, immutable';
    expect(await of('/')).toEqual([200, 'text/html;charset=utf-8', 'no-cache']);
    expect(await of('/assets/engine-abcd1234.wasm')).toEqual([200, 'application/wasm', forever]);
    expect(await of('/sw.js')).toEqual([200, 'text/javascript', 'no-cache']);
    expect(await of('/packs/index.json')).toEqual([200, 'application/json; charset=utf-8', 'no-cache']);
    expect(await of('/packs/here/n30w042.arrow')).toEqual([
      200,
      'application/vnd.apache.arrow.stream',
      'no-cache',
    ]);
    expect(await of('/packs/here/records.duckdb')).toEqual([200, 'application/octet-stream', 'no-cache']);
  });

  it('sends the compressed copy to whoever takes it', async () => {
    const path = '/assets/engine-abcd1234.wasm';
    const brotli = await ask(path, { 'Accept-Encoding': 'gzip, deflate, br' });
    expect([brotli.headers['content-encoding'], brotli.headers['content-type']]).toEqual([
      'br',
      'application/wasm',
    ]);
    expect(brotliDecompressSync(brotli.body)).toEqual(WASM);
    const gzip = await ask(path, { 'Accept-Encoding': 'gzip' });
    expect(gunzipSync(gzip.body)).toEqual(WASM);
    const plain = await ask(path);
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(plain.body).toEqual(WASM);
    for (const { headers } of [brotli, gzip, plain]) expect(headers.vary).toBe('Accept-Encoding');
  });

  it('answers 304 to the ETag it gave', async () => {
    const { headers } = await ask('/packs/index.json');
    expect((await ask('/packs/index.json', { 'If-None-Match': headers.etag ?? '' })).status).toBe(304);
  });

  it('shows a pack that came after the start', async () => {
    mkdirSync(join(folder, 'packs/late'));
    writeFileSync(join(folder, 'packs/late/pack.json'), '{}');
    expect((await ask('/packs/late/pack.json')).body.toString()).toBe('{}');
    expect((await ask('/packs/linked/n30w042.arrow')).status).toBe(200);
  });

  it('carries the security headers on every answer', async () => {
    // A worker has the policy of its own script, not of the page that started it; a service worker likewise.
    for (const path of ['/', '/sw.js', '/assets/work-abcd1234.js', '/packs', '/nothing']) {
      const { headers } = await ask(path);
      expect(headers['content-security-policy']).toContain("default-src 'self'; ");
      expect(headers['content-security-policy']).not.toMatch(
        /'unsafe-eval'|script-src[^;]*'unsafe-inline'|\*/,
      );
      expectStrict(String(headers['content-security-policy']));
      for (const power of ['camera', 'microphone', 'geolocation', 'usb', 'serial', 'hid', 'midi', 'payment'])
        expect(headers['permissions-policy']).toMatch(new RegExp(`(^|, )${power}=\\(\\)(,|$)`));
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['content-security-policy']).toContain("script-src 'self' 'wasm-unsafe-eval'");
      expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
    }
  });
});

it('lets files of a pack do nothing, in few words, since they are asked for by a hundred ranges', async () => {
  for (const path of ['/packs/index.json', '/packs/here/records.duckdb', '/packs/nothing']) {
    const { headers } = await ask(path, { Range: 'bytes=0-0' });
    expect(headers['content-security-policy']).toBe("default-src 'none'; frame-ancestors 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cross-origin-resource-policy']).toBe('same-origin');
    expect(JSON.stringify(headers).length).toBeLessThan(700);
  }
});

describe('what it does not give away', () => {
  it.each([
    '/../secret.txt',
    '/packs/../../secret.txt',
    '/packs/%2e%2e/%2e%2e/secret.txt',
    '/packs/..%2f..%2fsecret.txt',
    '/packs/..%5c..%5csecret.txt',
    '/packs/%252e%252e/%252e%252e/secret.txt',
    '/packs/here/..%00/secret.txt',
    '//etc/hostname',
    '/packs//etc/hostname',
    '/packs/%E0%A4%A',
    '/.inputs',
    '/packs/.hidden/pack.json',
    '/packs/here',
    '/packs/here/',
    '/packs',
    '/nothing',
  ])('%s', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body.toString()).toBe('There is nothing at this address.\n');
  });

  it('takes no other method', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS']) {
      const { status, headers } = await ask('/', {}, method);
      expect([status, headers.allow]).toEqual([405, 'GET, HEAD']);
    }
  });

  it('listens on this machine only, unless told otherwise', () => {
    expect(site.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  });
});

it('rejects when the port is taken', async () => {
  const port = Number(new URL(site.url).port);
  const again = serveSite({ page: join(folder, 'dist'), packs: join(folder, 'packs'), port });
  await expect(again).rejects.toMatchObject({ code: 'EADDRINUSE' });
});

it('survives readers that leave in the middle, and closes with one still waiting', async () => {
  writeFileSync(join(folder, 'packs/here/large.bin'), Buffer.alloc(20_000_000));
  const own = await serveSite({ page: join(folder, 'dist'), packs: join(folder, 'packs') });
  for (let i = 0; i < 20; i++) {
    await new Promise<void>((left) => {
      get(`${own.url}packs/here/large.bin`, (response) => {
        response.once('data', () => response.destroy());
        response.once('close', () => left());
      });
    });
  }
  expect(await fetch(`${own.url}packs/index.json`).then((reply) => reply.text())).toBe('[]');
  const idle = connect(Number(new URL(own.url).port), '127.0.0.1');
  idle.on('error', () => {});
  await new Promise((open) => idle.once('connect', open));
  await own.close();
  idle.destroy();
});
