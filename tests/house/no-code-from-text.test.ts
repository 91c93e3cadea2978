import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = path.join(import.meta.dirname, '..', '..');
/** Ways from a text to code, and from a text to markup. */
const CODE = /\beval\s*\(|\bnew Function\b|\bFunction\s*\(\s*['"`]|\bsetTimeout\s*\(\s*['"`]/;
const MARKUP =
  /\.(inner|outer)HTML\b|\binsertAdjacentHTML\b|\bdocument\.write\b|\{@html\b|\bcreateContextualFragment\b|\bsrcdoc\b/;

function sources(folder: string): string[] {
  return readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|svelte|js|html)$/.test(file))
    .map((file) => path.join(folder, file));
}

const holding = (files: readonly string[], pattern: RegExp): string[] =>
  files.filter((file) => pattern.test(readFileSync(path.join(ROOT, file), 'utf8')));

describe('text of others', () => {
  it('becomes neither code nor markup: none of our sources of the page has a way to', () => {
    const files = [...sources('web'), ...sources('analysis')];
    expect(files.length).toBeGreaterThan(300);
    expect(holding(files, CODE)).toEqual([]);
    expect(holding(files, MARKUP)).toEqual([]);
  });

  // The engine's thread alone names `Function`, in glue that its own policy keeps from running.
  it.runIf(existsSync(path.join(ROOT, 'dist/assets')))(
    'becomes no code in what was built, the database engine’s own glue apart',
    () => {
      const files = readdirSync(path.join(ROOT, 'dist/assets'))
        .filter((file) => file.endsWith('.js') && !file.startsWith('duckdb-browser'))
        .map((file) => path.join('dist/assets', file));
      expect(holding(files, CODE)).toEqual([]);
    },
  );
});
