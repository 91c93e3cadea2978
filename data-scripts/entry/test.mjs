/**
 * `npm test`: everything that can be said about the project on this machine, in one run that installs what it lacks.
 * `--long`: the soak and fuzz runs instead. A failing stage doesn't stop the others; the last line has the sums.
 */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

import { runTool } from './child.mjs';
import { ensureChromium } from './chromium.mjs';
import { ensurePacks } from './demo-pack.mjs';
import { ensureInstalled } from './install.mjs';
import { ensurePage } from './page.mjs';
import { EntryError, ROOT, endWithNpm, enter } from './project.mjs';
import { countReport } from './test-counts.mjs';

const REPORTS = join(ROOT, '.cache/reports');
const TEST_PACKS = join(ROOT, '.cache/test-packs');

/** Most that a stage may take before it is stopped and counts as failed, s. */
const LIMIT_S = { check: 180, unit: 480, build: 240, browser: 600, long: 3600 };

const sum = { passed: 0, failed: 0 };
const began = performance.now();

await enter(async () => {
  endWithNpm();
  const args = process.argv.slice(2);
  if (args.some((arg) => arg !== '--long')) throw new EntryError('Only --long may follow "npm test --".');
  mkdirSync(REPORTS, { recursive: true });

  const env = { CHROMIUM: await ensureAll(), PACKS: TEST_PACKS };

  if (args.includes('--long')) {
    if (await buildAll()) await tests('long', env);
  } else {
    // Each of them uses one core: two go on at a time.
    const others = async () => {
      await check('prettier', ['--check', '--log-level', 'warn', '.']);
      await check('tsc', ['--noEmit']);
      await check('svelte-check', [
        '--tsconfig',
        './tsconfig.json',
        '--fail-on-warnings',
        '--output',
        'human',
      ]);
    };
    await Promise.all([check('eslint', ['.']), others()]);
    await tests('unit', env);
    if (await buildAll()) await tests('browser', env);
  }
  console.log(`In ${seconds(began)} s:`);
  console.log(`${sum.passed} passed, ${sum.failed} failed`);
  process.exit(sum.failed === 0 ? 0 : 1);
});

/** Installs what is missing, packages and browser side by side, since both wait for the network; the browser's path. */
async function ensureAll() {
  const [packages, chromium] = await Promise.allSettled([ensureInstalled(), ensureChromium()]);
  for (const { status, reason } of [packages, chromium]) if (status === 'rejected') throw reason;
  return chromium.value;
}

/** One of the tools that look at the sources; it counts as one test. */
async function check(tool, args) {
  const from = begin(tool);
  // Kept till the end, so that what two tools say at a time isn't mixed up.
  const { code, output, timedOut } = await runTool(tool, args, { capture: true, limitS: LIMIT_S.check });
  if (code !== 0) console.log(output);
  add(tool, { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1 }, from, timedOut);
}

/** Builds the page and the demo pack that browser tests look at; a failed build counts as one failed test. */
async function buildAll() {
  const from = begin('build');
  try {
    await ensurePage({ limitS: LIMIT_S.build });
    await ensurePacks(TEST_PACKS, { limitS: LIMIT_S.build });
    end('build', 'page and demo pack are built', from);
    return true;
  } catch (error) {
    console.log(error instanceof EntryError ? error.message : error);
    add('build', { passed: 0, failed: 1, note: 'the tests that need it were not run' }, from);
    return false;
  }
}

async function tests(kind, env) {
  const from = begin(kind);
  const report = join(REPORTS, `${kind}.json`);
  rmSync(report, { force: true });
  const config = kind === 'unit' ? 'vitest.config.ts' : `vitest.${kind}.config.ts`;
  const args = [
    'run',
    '--config',
    config,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ];
  const { code, timedOut } = await runTool('vitest', args, { env, limitS: LIMIT_S[kind] });
  add(kind, countReport(report, code), from, timedOut);
}

function begin(stage) {
  console.log(`\n── ${stage} (after ${seconds(began)} s)`);
  return performance.now();
}

function add(stage, { passed, failed, note }, from, timedOut = false) {
  sum.passed += passed;
  sum.failed += failed;
  const notes = [timedOut && 'stopped at its time limit', note].filter(Boolean).join(', ');
  end(stage, `${passed} passed, ${failed} failed${notes ? ` (${notes})` : ''}`, from);
}

function end(stage, result, from) {
  console.log(`── ${stage}: ${result}, ${seconds(from)} s`);
}

function seconds(from) {
  return ((performance.now() - from) / 1000).toFixed(1);
}
