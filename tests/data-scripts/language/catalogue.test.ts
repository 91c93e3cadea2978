import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

import { afterEach, beforeEach, describe, expect, it } from 'vitest';

import {
  broughtUpToDate,
  readCatalogue,
  translationsOf,
  writeCatalogue,
} from '../../../data-scripts/language/catalogue.ts';
import { catalogueFaults } from '../../../data-scripts/language/check-catalogue.ts';
import { parsePo, writePo, type Entry } from '../../../data-scripts/language/po-file.ts';
import { catalogueJson } from '../../../data-scripts/language/vite-catalogues.ts';

let root: string;
beforeEach(() => (root = mkdtempSync(path.join(tmpdir(), 'catalogue-'))));
afterEach(() => rmSync(root, { recursive: true }));

const all = (): boolean => true;
const entry = (english: string, translation = ''): Entry => ({ english, translation, sources: ['a.ts'] });
const said = (files: Record<string, string[]>): Map<string, Map<string, string[]>> =>
  new Map(Object.entries(files).map(([name, keys]) => [name, new Map(keys.map((key) => [key, ['a.ts']]))]));

describe('a catalogue file', () => {
  it('gives back what was written, whatever letters it holds', () => {
    const entries = [
      { ...entry('Say "it" \\ {0}\nnew line', '«Así» {0}\tñ'), note: 'Of a button.' },
      entry(' at the ends ', ' en los extremos '),
      { ...entry('Twice', 'Dos veces'), sources: ['a.ts', 'b.svelte'] },
    ];
    expect(parsePo(writePo('es', entries))).toEqual(entries);
  });

  it('takes a fuzzy translation for none', () => {
    expect(parsePo('#, fuzzy\nmsgid "One"\nmsgstr "Uno"\n')[0].translation).toBe('');
  });
});

describe('bringing up to date', () => {
  it('adds what is new, as another file says it, drops what is gone and keeps the rest', () => {
    const before = new Map([['a', [entry('Kept', 'Guardado'), entry('Gone', 'Ido')]]]);
    const after = broughtUpToDate(before, said({ a: ['New', 'Kept'], b: ['Kept'] }));
    expect(after.get('a')!.map(({ english, translation }) => [english, translation])).toEqual([
      ['New', ''],
      ['Kept', 'Guardado'],
    ]);
    expect(after.get('b')![0].translation).toBe('Guardado');
  });

  it('writes only the files asked for and only where they change, and removes empty ones', () => {
    const first = broughtUpToDate(new Map(), said({ a: ['One'], b: ['Two'] }));
    expect(writeCatalogue(root, 'es', first, (name) => name === 'a')).toEqual(['a']);
    expect(writeCatalogue(root, 'es', first, all)).toEqual(['b']);
    expect(writeCatalogue(root, 'es', broughtUpToDate(first, said({ b: ['Two'] })), all)).toEqual(['a']);
    const folder = path.join(root, 'web/language/es');
    expect(readdirSync(folder)).toEqual(['b.po']);
    expect(readFileSync(path.join(folder, 'b.po'), 'utf8')).not.toMatch(/:\d/);
  });

  it('is one map for the page, of what is translated', () => {
    writeCatalogue(root, 'es', new Map([['a', [entry('One', 'Uno'), entry('Two')]]]), all);
    expect(JSON.parse(catalogueJson(root, 'es'))).toEqual({ One: 'Uno' });
    expect(translationsOf(readCatalogue(root, 'es')).size).toBe(1);
  });
});

describe('the check', () => {
  const faults = (entries: Record<string, Entry[]>, keys: Record<string, string[]>): string[] =>
    catalogueFaults(new Map(Object.entries(entries)), said(keys), all);

  it('finds nothing where all is said and translated', () => {
    expect(faults({ a: [entry('{0} of {1}', '{1}: {0}')] }, { a: ['{0} of {1}'] })).toEqual([]);
  });

  it('tells what is missing, unused, or has other values or spaces', () => {
    expect(faults({ a: [entry('One'), entry('Old', 'Viejo')] }, { a: ['One', 'Two'] })).toEqual([
      'a.po: no translation of "One" (a.ts)',
      'a.po: no translation of "Two" (a.ts)',
      'a.po: "Old" is no longer said',
    ]);
    expect(faults({ a: [entry('{0} of {1}', '{0} de {2}')] }, { a: ['{0} of {1}'] })[0]).toMatch(/values of/);
    expect(faults({ a: [entry('In ', 'En')] }, { a: ['In '] })[0]).toMatch(/spaces at the ends/);
  });

  it('tells a phrase with two translations, and only in the files asked for', () => {
    const files = { a: [entry('One', 'Uno')], b: [entry('One', 'Una')], c: [] };
    const keys = said({ a: ['One'], b: ['One'] });
    expect(faults(files, { a: ['One'], b: ['One'] })).toEqual(['"One" is "Uno" in a.po and "Una" in b.po']);
    expect(catalogueFaults(new Map(Object.entries(files)), keys, (name) => name === 'c')).toEqual([]);
  });
});
