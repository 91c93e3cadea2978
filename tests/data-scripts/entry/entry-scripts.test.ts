import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ENTRY = resolve('data-scripts/entry');

/** The scripts are plain JavaScript, since they run before TypeScript is there: what they export is typed here. */
const load = <T>(name: string): Promise<T> => import(pathToFileURL(join(ENTRY, name)).href);

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'entry-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function run(script: string, args: string[] = [], env: Record<string, string> = {}) {
  const result = spawnSync(process.execPath, [join(ENTRY, script), ...args], {
    encoding: 'utf8',
    env: { ...process.env, npm_lifecycle_event: '', ...env },
  });
  return { code: result.status, stdout: result.stdout, stderr: result.stderr.trim() };
}

describe('install', async () => {
  const { isInstalled } = await load<{ isInstalled(root?: string): boolean }>('install.mjs');
  const entry = (version: string, more = {}) => ({ version, integrity: `sha512-${version}`, ...more });

  function project(wanted: object, installed?: object): string {
    const root = mkdtempSync(join(folder, 'project-'));
    writeFileSync(
      join(root, 'package-lock.json'),
      JSON.stringify({ packages: { '': { version: '9' }, ...wanted } }),
    );
    if (installed !== undefined) {
      mkdirSync(join(root, 'node_modules'));
      writeFileSync(join(root, 'node_modules/.package-lock.json'), JSON.stringify({ packages: installed }));
    }
    return root;
  }

  it('is content with what the lock file asks for, on this machine', () => {
    const same = { 'node_modules/a': entry('1.0.0') };
    expect(isInstalled(project(same, same))).toBe(true);
    const other = { 'node_modules/for-another-machine': entry('1.0.0', { optional: true }) };
    expect(isInstalled(project({ ...same, ...other }, same))).toBe(true);
  });

  it('sees what is absent, broken off, of another version or of other content', () => {
    const wanted = { 'node_modules/a': entry('1.0.0') };
    expect(isInstalled(project(wanted))).toBe(false);
    expect(isInstalled(project(wanted, {}))).toBe(false);
    expect(isInstalled(project(wanted, { 'node_modules/a': entry('1.0.1') }))).toBe(false);
    const changed = { 'node_modules/a': { version: '1.0.0', integrity: 'sha512-other' } };
    expect(isInstalled(project(wanted, changed))).toBe(false);
  });

  it('finds this very project installed', () => {
    expect(isInstalled()).toBe(true);
  });
});

describe('the sum of a test run', async () => {
  type Count = { passed: number; failed: number; note: string };
  const { countReport } = await load<{ countReport(path: string, code: number | null): Count }>(
    'test-counts.mjs',
  );

  function count(report: object, code: number): Count {
    const path = join(folder, 'report.json');
    const none = {
      numPassedTests: 0,
      numFailedTests: 0,
      numPendingTests: 0,
      numTodoTests: 0,
      testResults: [],
    };
    writeFileSync(path, JSON.stringify({ ...none, ...report }));
    return countReport(path, code);
  }

  it('takes passed and failed as reported, and names what was skipped', () => {
    const failing = { status: 'failed', assertionResults: [{ status: 'failed' }, { status: 'passed' }] };
    const report = { numPassedTests: 5, numFailedTests: 1, numPendingTests: 2, testResults: [failing] };
    expect(count(report, 1)).toEqual({ passed: 5, failed: 1, note: '2 skipped' });
  });

  it('never adds up to no failure when something went wrong', () => {
    const unloaded = { testResults: [{ status: 'failed', assertionResults: [] }], numPassedTests: 4 };
    expect(count(unloaded, 1)).toMatchObject({ passed: 4, failed: 1 });
    expect(count({ numPassedTests: 4 }, 1)).toMatchObject({ passed: 4, failed: 1 });
    expect(count({}, 0)).toMatchObject({ passed: 0, failed: 1, note: 'no test ran' });
    expect(countReport(join(folder, 'absent.json'), 0)).toMatchObject({ passed: 0, failed: 1 });
  });
});

describe('bundle', async () => {
  const { bundle } = await load<{ bundle(source: string): Promise<string> }>('bundle.mjs');

  it('makes a module that Node runs, once for the same sources, the server for one', async () => {
    const made = await bundle('data-scripts/serve/site-server.ts');
    expect(made).toMatch(/\.cache\/commands\/site-server-[0-9a-f]{16}\.mjs$/);
    expect(await bundle('data-scripts/serve/site-server.ts')).toBe(made);
    const { serveSite } = await import(pathToFileURL(made).href);
    const site = await serveSite({ page: folder, packs: folder });
    expect((await fetch(site.url)).status).toBe(404);
    await site.close();
  });
});

describe('run', () => {
  it('says which command is not there', () => {
    for (const name of ['nothing', '../entry/run', '']) {
      expect(run('run.mjs', [name])).toEqual({
        code: 1,
        stdout: '',
        stderr: `There is no command "${name}" in data-scripts/commands.`,
      });
    }
  });

  it('hands arguments on, and exit codes back', () => {
    expect(run('run.mjs', ['records', '--help'])).toMatchObject({ code: 0, stderr: '' });
    expect(run('run.mjs', ['records', 'no-such-verb']).code).toBe(2);
  });
});

describe('start', () => {
  it.each([
    [{ PORT: '80a' }, 'PORT is "80a", but a port is a whole number from 0 to 65535.'],
    [{ PORT: '65536' }, 'PORT is "65536", but a port is a whole number from 0 to 65535.'],
    [{ PACKS: '/dev/null' }, 'PACKS is /dev/null, which is not a folder.'],
    [{ PACKS: '/dev/null/x' }, "The folder /dev/null/x for packs can't be made (ENOTDIR)."],
  ])('refuses %j in one sentence', (env, sentence) => {
    expect(run('start.mjs', [], env)).toEqual({ code: 1, stdout: '', stderr: sentence });
  });

  it('says at once, before it builds anything, that the port is taken', async () => {
    const other = createServer();
    await new Promise<void>((open) => other.listen(0, '127.0.0.1', open));
    const { port } = other.address() as AddressInfo;
    const packs = join(folder, 'never-built');
    const child = spawn(process.execPath, [join(ENTRY, 'start.mjs')], {
      env: { ...process.env, PORT: String(port), PACKS: packs },
    });
    let said = '';
    child.stderr.on('data', (chunk) => (said += chunk));
    const code = await new Promise((ended) => child.once('close', ended));
    other.close();
    expect([code, said]).toEqual([
      1,
      `Port ${port} is taken by another program: choose one with PORT=number npm start.\n`,
    ]);
  });
});

describe('test', () => {
  it('refuses a Chromium that is none, and an argument it does not know', () => {
    expect(run('test.mjs', [], { CHROMIUM: '/nowhere/chromium' })).toEqual({
      code: 1,
      stdout: '',
      stderr: 'CHROMIUM is "/nowhere/chromium", which is not a program.',
    });
    expect(run('test.mjs', ['--fast']).stderr).toBe('Only --long may follow "npm test --".');
  });
});
