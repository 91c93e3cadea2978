import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { extname } from 'node:path';

import { describe, expect, it } from 'vitest';

/** Files of the project, as they are in this checkout. */
const FILES = execFileSync('git', ['ls-files', '-z'], { encoding: 'utf8' })
  .split('\0')
  .filter((path) => path !== '' && existsSync(path));

const TEXT = new Set([
  '.ts',
  '.js',
  '.mjs',
  '.cjs',
  '.svelte',
  '.css',
  '.html',
  '.sql',
  '.json',
  '.csv',
  '.md',
  '.py',
  '.R',
  '',
]);
const texts = FILES.filter((path) => TEXT.has(extname(path)));
const read = (path: string): string => readFileSync(path, 'utf8');
const json = (path: string) => JSON.parse(read(path));

/** `file:line: text` of each line that matches. */
function linesWith(pattern: RegExp, paths: string[]): string[] {
  return paths.flatMap((path) =>
    read(path)
      .split('\n')
      .flatMap((line, i) => (pattern.test(line) ? [`${path}:${i + 1}: ${line.trim().slice(0, 80)}`] : [])),
  );
}

describe('packages', () => {
  const { dependencies, devDependencies, scripts } = json('package.json');
  const wanted: [string, string][] = Object.entries({ ...dependencies, ...devDependencies });

  it('are pinned to one exact version each', () => {
    expect(wanted.filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))).toEqual([]);
  });

  it('are locked in those very versions, without addresses to fetch them from', () => {
    const { packages } = json('package-lock.json');
    for (const [name, version] of wanted)
      expect([name, packages[`node_modules/${name}`]?.version]).toEqual([name, version]);
    expect(linesWith(/"resolved"|https?:\/\/[^"]*\.tgz/, ['package-lock.json'])).toEqual([]);
  });

  it('hold one apache-arrow, of the version that the database engine speaks', () => {
    const { packages } = json('package-lock.json');
    const found = Object.keys(packages).filter((path) => path.endsWith('node_modules/apache-arrow'));
    expect(found).toEqual(['node_modules/apache-arrow']);
    expect(packages[found[0]].version).toBe('17.0.0');
  });

  it('run the scripts that the entry folder holds', () => {
    const called = Object.values(scripts as Record<string, string>).flatMap(
      (line) => line.match(/[\w/-]+\.mjs/g) ?? [],
    );
    expect(called.length).toBeGreaterThanOrEqual(6);
    expect(called.filter((path) => !existsSync(path))).toEqual([]);
  });
});

describe('what the README promises', () => {
  const { scripts } = json('package.json');

  it('names only commands that are there', () => {
    const text = read('README.md') + (existsSync('DEVELOPERS.md') ? read('DEVELOPERS.md') : '');
    const named = [...text.matchAll(/(?:^|`)(?:\w+=\S+ )*npm (?:run )?([\w:-]+)/gm)].map(([, name]) => name);
    expect(named).toEqual(expect.arrayContaining(['start', 'test', 'records', 'assess']));
    expect(named.filter((name) => !(name in scripts) && name !== 'ci')).toEqual([]);
  });

  it('has each command that an npm script calls', () => {
    const commands = Object.values(scripts as Record<string, string>).flatMap((line) => {
      const [, name] = /entry\/run\.mjs (\w+)/.exec(line) ?? [];
      if (name === undefined) return [];
      return [name === 'bench' ? 'tests/bench/main.ts' : `data-scripts/commands/${name}.ts`];
    });
    expect(commands).toHaveLength(4);
    expect(commands.filter((path) => !existsSync(path))).toEqual([]);
  });

  it('links only to files and pictures that are there', () => {
    for (const page of ['README.md', 'DEVELOPERS.md']) {
      const links = [...read(page).matchAll(/\]\((?!https?:|#)([^)#]+)/g)].map(([, path]) => path);
      expect(links.filter((path) => !existsSync(path))).toEqual([]);
    }
  });
});

describe('no file', () => {
  // Put together from pieces, so that this file is not its own finding.
  const hosts = [
    ['registry', 'npmjs'],
    ['deb', 'debian'],
    ['pypi', 'org'],
    ['registry', 'yarnpkg'],
  ];

  it('names the host of a package registry', () => {
    const pattern = new RegExp(hosts.map((parts) => parts.join('\\.')).join('|'));
    expect(linesWith(pattern, texts)).toEqual([]);
  });

  it('names a folder of the machine it was written on', () => {
    const folders = ['work', 'root', 'home', 'Users'].join('|');
    expect(linesWith(new RegExp(`(^|[^\\w.:/*-])/(${folders})/`), texts)).toEqual([]);
  });

  it('leaves a mark for work that was put off', () => {
    const marks = ['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX'];
    expect(linesWith(new RegExp(`\\b(${marks.join('|')})\\b`), texts)).toEqual([]);
  });

  it('skips or singles out a test for good', () => {
    const tests = FILES.filter((path) => /^tests\/.*\.test\.ts$/.test(path));
    const word = ['only', 'todo', 'skip'].join('|');
    expect(linesWith(new RegExp(`\\b(it|test|describe)\\.(${word})\\(`), tests)).toEqual([]);
  });
});

describe('rooms', () => {
  const sources = FILES.filter((path) => /^(analysis|web|data-scripts)\/.*\.(ts|mjs|cjs|svelte)$/.test(path));

  it('each say what belongs in them', () => {
    const rooms = new Set(
      sources.map((path) => path.split('/').slice(0, 2).join('/')).filter((path) => extname(path) === ''),
    );
    expect([...rooms].filter((room) => !existsSync(`${room}/README.md`))).toEqual([]);
  });

  it('hold files that can be read in one go: fewer than 300 lines', () => {
    const long = sources.filter((path) => read(path).split('\n').length > 300);
    expect(long).toEqual([]);
  });

  it('are named in lower case with hyphens, components by their name', () => {
    const odd = sources.filter((path) => {
      const name = path.slice(path.lastIndexOf('/') + 1);
      return !(
        /^[a-z0-9-]+(\.svelte|\.d|\.worker)?\.(ts|mjs|cjs)$/.test(name) || /^[A-Z]\w+\.svelte$/.test(name)
      );
    });
    expect(odd).toEqual([]);
  });
});
