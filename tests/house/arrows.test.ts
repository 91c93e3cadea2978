import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

/**
 * The arrows between rooms (design section 4) hold only as long as the linter sees them, so each is broken here on
 * purpose, in text that is never written to disk. The imported files exist: an import of a file that isn't there is
 * a different fault.
 */
const eslint = new ESLint();

async function faults(filePath: string, line: string): Promise<string[]> {
  const [result] = await eslint.lintText(`${line}\nexport const probe = taken;\n`, { filePath });
  return result.messages.map((message) => message.ruleId ?? message.message);
}

const taken = (path: string): string => `import { taken } from '${path}';`;

describe('imports that climb are refused', () => {
  const upward: [file: string, imported: string][] = [
    ['analysis/math/probe.ts', '../answer/assessment.ts'],
    ['analysis/math/probe.ts', '../units/temperature.ts'],
    ['analysis/units/probe.ts', '../records/station.ts'],
    ['analysis/records/probe.ts', '../answer/assessment.ts'],
    ['analysis/night/probe.ts', '../answer/assessment.ts'],
    ['analysis/records/probe.ts', '../../data-scripts/fetch/fetch-archive.ts'],
    ['analysis/answer/probe.ts', '../../data-scripts/fetch/fetch-archive.ts'],
    ['web/views/probe.ts', '../../data-scripts/fetch/fetch-archive.ts'],
    ['data-scripts/fetch/probe.ts', '../../web/state/choices.svelte.ts'],
  ];
  it.each(upward)('%s must not import %s', async (file, imported) => {
    expect(await faults(file, taken(imported))).toEqual(['boundaries/dependencies']);
  });

  it('a type, a re-export and a dynamic import climb no better than a value', async () => {
    const lines = [
      "import type { Assessment as taken } from '../answer/assessment.ts';",
      "export { Assessment } from '../answer/assessment.ts'; const taken = 1;",
      "const taken = await import('../answer/assessment.ts');",
    ];
    for (const line of lines) {
      expect(await faults('analysis/math/probe.ts', line)).toContain('boundaries/dependencies');
    }
  });

  it('a folder that is no room is refused', async () => {
    for (const file of ['analysis/night/probe.ts', 'web/views/probe.ts', 'data-scripts/fetch/probe.ts']) {
      const up = '../'.repeat(file.split('/').length - 1);
      expect(await faults(file, taken(`${up}vite.config.ts`))).toEqual([
        'boundaries/no-unknown-dependencies',
      ]);
    }
  });
});

describe('imports that go down are allowed', () => {
  const downward: [file: string, imported: string][] = [
    ['analysis/records/probe.ts', '../units/temperature.ts'],
    ['analysis/night/probe.ts', '../records/nights.ts'],
    ['analysis/answer/probe.ts', '../records/winters.ts'],
    ['web/views/probe.ts', '../../analysis/records/station.ts'],
    ['data-scripts/fetch/probe.ts', '../../analysis/records/station.ts'],
    ['tests/house/probe.ts', '../../data-scripts/fetch/fetch-archive.ts'],
  ];
  it.each(downward)('%s may import %s', async (file, imported) => {
    expect(await faults(file, taken(imported))).toEqual([]);
  });
});

describe('analysis stays pure', () => {
  it.each([
    ["import { readFileSync as taken } from 'node:fs';", 'no-restricted-imports'],
    ['const taken = Math.random();', 'no-restricted-properties'],
    ['const taken = Date.now();', 'no-restricted-properties'],
    ['const taken = new Date();', 'no-restricted-syntax'],
    ["const taken = await fetch('x');", 'no-restricted-globals'],
    ['const taken = document.title;', 'no-restricted-globals'],
  ])('%s', async (line, rule) => {
    expect(await faults('analysis/night/probe.ts', line)).toEqual([rule]);
  });
});
