import { createHash } from 'node:crypto';
import { readFile, readdir, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';

import { build } from 'esbuild';
import type { Plugin } from 'vite';

import { SITE_FILE } from './archives.ts';
import { compressFile } from './precompress.ts';

/** Name of the worker's file; its place decides what it may serve, so it lies beside the page. */
const WORKER_FILE = 'sw.js';

/** Not kept: the worker itself, and settings that the server may tell otherwise tomorrow. */
const NEVER = new Set([WORKER_FILE, SITE_FILE]);

/** What only fetching from an archive needs, which needs a network anyway. */
const ONLINE = /^assets\/(us-postcodes|states-10m|land-110m)-/;

/** The page does without the database engine until it is asked about nights, and without the world's shores until records are added. */
const LATER = /^assets\/(duckdb-(eh|browser-eh\.worker)|land-[15]0m)-/;

/** Names that carry a hash of the content, as `headers.ts` knows them. */
const HASHED = /^assets\/.+-[\w-]{8}\.\w+$/;

/**
 * Writes the worker that serves the page without network, with the list of the files it keeps, when everything else has
 * been built and compressed.
 */
export function offlineWorker(): Plugin {
  return {
    name: 'offline-worker',
    apply: 'build',
    writeBundle: {
      order: 'post',
      sequential: true,
      handler: async ({ dir }) => void (dir && (await writeWorker(dir))),
    },
  };
}

async function writeWorker(folder: string): Promise<void> {
  const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((name) => !NEVER.has(name) && !ONLINE.test(name) && !/\.(br|gz|map|tmp)$/.test(name))
    .sort();
  const files = await Promise.all(names.map((name) => describe(folder, name)));
  const version = createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 16);
  const { outputFiles } = await build({
    entryPoints: [resolve('web/offline/worker/page-worker.ts')],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    define: { SITE: JSON.stringify({ version, files }) },
  });
  const file = join(folder, WORKER_FILE);
  await writeFile(file, outputFiles[0].contents);
  await compressFile(file);
}

async function describe(folder: string, name: string): Promise<object> {
  const file = join(folder, name);
  const { size } = await stat(file);
  const compressed = await stat(`${file}.br`).catch(() => null);
  const hash = async (): Promise<string> =>
    createHash('sha256')
      .update(await readFile(file))
      .digest('hex')
      .slice(0, 16);
  return {
    path: name === 'index.html' ? '' : name,
    revision: HASHED.test(name) ? null : await hash(),
    bytes: size,
    sent: compressed?.size ?? size,
    later: LATER.test(name),
  };
}
