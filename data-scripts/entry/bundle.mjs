import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';

import { contentHash } from './content-hash.mjs';
import { ROOT } from './project.mjs';

const FOLDER = join(ROOT, '.cache/commands');
const KEPT = 3;

/** What a bundle is made from: the same for all, so that a change anywhere is never missed. */
const INPUTS = ['analysis', 'data-scripts', 'tests/bench', 'package-lock.json'];

/**
 * Path of a module that Node can run, made from a TypeScript source (relative to the project) when its inputs have
 * changed since the last time. SQL and other text imported with `?raw` is inside, packages are not.
 */
export async function bundle(source) {
  const name = basename(source, extname(source));
  const made = join(FOLDER, `${name}-${contentHash(INPUTS)}.mjs`);
  if (existsSync(made)) return made;
  const { build } = await import('esbuild');
  const unfinished = `${made}.${process.pid}.tmp`;
  mkdirSync(FOLDER, { recursive: true });
  await build({
    entryPoints: [join(ROOT, source)],
    outfile: unfinished,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    sourcemap: 'inline',
    logLevel: 'error',
    plugins: [rawText],
  });
  renameSync(unfinished, made);
  removeOld(name, made);
  return made;
}

/** `import text from './file.sql?raw'`, as Vite understands it. */
const rawText = {
  name: 'raw-text',
  setup(build) {
    build.onResolve({ filter: /\?raw$/ }, ({ path, importer }) => ({
      path: resolve(dirname(importer), path.slice(0, -'?raw'.length)),
      namespace: 'raw',
    }));
    build.onLoad({ filter: /.*/, namespace: 'raw' }, ({ path }) => ({
      contents: readFileSync(path, 'utf8'),
      loader: 'text',
      watchFiles: [path],
    }));
  },
};

function removeOld(name, current) {
  const made = new RegExp(`^${name}-[0-9a-f]{16}\\.mjs$`);
  const old = readdirSync(FOLDER)
    .filter((file) => made.test(file) && join(FOLDER, file) !== current)
    .map((file) => ({ path: join(FOLDER, file), time: statSync(join(FOLDER, file)).mtimeMs }))
    .sort((a, b) => b.time - a.time);
  for (const { path } of old.slice(KEPT)) rmSync(path, { force: true });
}
