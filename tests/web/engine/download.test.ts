import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createRequire } from 'node:module';
import { statSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { download, type OnBytes } from '../../../web/engine/download.ts';
import { checkWasm } from '../../../web/engine/check-wasm.ts';
import { WASM_BYTES, WORKER_BYTES } from '../../../web/engine/engine-size.ts';

const BODY = Buffer.alloc(300_000, 'cold night ');
let server: Server;
let base = '';

beforeAll(async () => {
  server = createServer((request, response) => {
    switch (request.url) {
      case '/plain':
        return void response.writeHead(200, { 'content-length': BODY.length }).end(BODY);
      case '/gzip': {
        const packed = gzipSync(BODY);
        return void response
          .writeHead(200, { 'content-encoding': 'gzip', 'content-length': packed.length })
          .end(packed);
      }
      case '/cut':
        response.writeHead(200, { 'content-length': BODY.length });
        return void response.write(BODY.subarray(0, 100_000), () => setTimeout(() => response.destroy(), 20));
      default:
        return void response.writeHead(503).end('busy');
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => new Promise((resolve) => server.close(resolve)));

async function get(path: string, expectedBytes = 0) {
  const steps: [number, number | null][] = [];
  const onBytes: OnBytes = (loaded, total) => steps.push([loaded, total]);
  const file = { url: base + path, what: 'the database engine', type: 'application/wasm', expectedBytes };
  const blob = await download(file, (url) => fetch(url), onBytes);
  return { blob, steps };
}

describe('a download counted in bytes', () => {
  it('arrives whole, with a total from Content-Length and rising counts', async () => {
    const { blob, steps } = await get('/plain');
    expect(Buffer.from(await blob.arrayBuffer()).equals(BODY)).toBe(true);
    expect(blob.type).toBe('application/wasm');
    expect(steps[0]).toEqual([0, BODY.length]);
    expect(steps.at(-1)).toEqual([BODY.length, BODY.length]);
    steps.reduce((before, [loaded]) => (expect(loaded).toBeGreaterThanOrEqual(before), loaded), 0);
  });

  it('takes the expected size, not Content-Length, when the answer is compressed', async () => {
    const { blob, steps } = await get('/gzip', BODY.length);
    expect(blob.size).toBe(BODY.length);
    expect(steps.at(-1)).toEqual([BODY.length, BODY.length]);
  });

  it('drops a total that proves too small', async () => {
    const { steps } = await get('/gzip', 1000);
    expect(steps.at(-1)).toEqual([BODY.length, null]);
  });

  it('fails in one sentence: refused, cut off, not reached', async () => {
    await expect(get('/busy')).rejects.toThrow(
      'Could not load the database engine: the server answered 503.',
    );
    await expect(get('/cut')).rejects.toThrow(
      /^The connection broke off after \d+ bytes of the database engine\.$/,
    );
    const closed = { url: 'http://127.0.0.1:9/x', what: 'the database engine', type: '', expectedBytes: 0 };
    const refuse = async (): Promise<never> => {
      throw new TypeError('fetch failed');
    };
    await expect(download(closed, refuse, () => {})).rejects.toThrow(
      'Could not reach the server for the database engine',
    );
  });

  it('knows the sizes of the engine that is installed', () => {
    const { resolve } = createRequire(import.meta.url);
    const size = (file: string): number => statSync(resolve(`@duckdb/duckdb-wasm/dist/${file}`)).size;
    expect(WASM_BYTES).toBe(size('duckdb-eh.wasm'));
    expect(WORKER_BYTES).toBe(size('duckdb-browser-eh.worker.js'));
  });

  it('refuses what can not be the engine', async () => {
    const wasm = new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]);
    await expect(checkWasm(new Blob([wasm]), 8)).resolves.toBeUndefined();
    await expect(checkWasm(new Blob(['<!doctype html>']), 15)).rejects.toThrow(
      'The server sent something else',
    );
    await expect(checkWasm(new Blob([wasm]), 9)).rejects.toThrow('arrived damaged: 8 of 9 bytes');
    await expect(checkWasm(new Blob([]), 9)).rejects.toThrow('The server sent something else');
  });
});
