import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';

import { InputError } from '../../analysis/records/input-error.ts';
import { parsePo, writePo, type Entry } from './po-file.ts';
import type { SourcePhrases } from './source-phrases.ts';

/** The languages the project speaks besides English. */
export const LANGUAGES = ['es'] as const;

/** A language's catalogue files by their names without `.po`. */
export type Catalogue = ReadonlyMap<string, readonly Entry[]>;

/** Folder of a language's files. */
export function catalogueFolder(root: string, language: string): string {
  return path.join(root, 'web/language', language);
}

/** Reads the files of a language. Throws `InputError` with the file's name where one can't be read. */
export function readCatalogue(root: string, language: string): Catalogue {
  const folder = catalogueFolder(root, language);
  const files = existsSync(folder) ? readdirSync(folder).filter((file) => file.endsWith('.po')) : [];
  return new Map(
    files.sort().map((file) => [file.slice(0, -'.po'.length), readFile(path.join(folder, file))]),
  );
}

function readFile(file: string): Entry[] {
  try {
    return parsePo(readFileSync(file, 'utf8'));
  } catch (error) {
    throw new InputError(`${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The translation of every key that has one, whichever file it stands in. */
export function translationsOf(catalogue: Catalogue): Map<string, string> {
  const all = [...catalogue.values()].flat().filter(({ translation }) => translation !== '');
  return new Map(all.map(({ english, translation }) => [english, translation]));
}

/**
 * A catalogue that holds just what is said: new keys are added untranslated, or as another file translates them; keys that
 * are no longer said are dropped.
 */
export function broughtUpToDate(catalogue: Catalogue, said: SourcePhrases): Map<string, Entry[]> {
  const elsewhere = translationsOf(catalogue);
  const entries = ([name, phrases]: [string, ReadonlyMap<string, readonly string[]>]): [string, Entry[]] => {
    const before = new Map(catalogue.get(name)?.map((entry) => [entry.english, entry]));
    const made = [...phrases].map(([english, sources]) => {
      const entry = before.get(english);
      const translation = entry?.translation || (elsewhere.get(english) ?? '');
      return { english, sources, translation, ...(entry?.note ? { note: entry.note } : {}) };
    });
    return [name, made];
  };
  return new Map([...said].map(entries));
}

/** Writes the files that changed and removes those with nothing in them, within `isAsked`; returns their names. */
export function writeCatalogue(
  root: string,
  language: string,
  catalogue: Catalogue,
  isAsked: (name: string) => boolean,
): string[] {
  const folder = catalogueFolder(root, language);
  mkdirSync(folder, { recursive: true });
  const fileOf = (name: string): string => path.join(folder, `${name}.po`);
  const gone = [...readCatalogue(root, language).keys()].filter(
    (name) => isAsked(name) && !catalogue.has(name),
  );
  for (const name of gone) rmSync(fileOf(name));
  const changed = [...catalogue].filter(([name, entries]) => {
    if (!isAsked(name)) return false;
    const text = writePo(language, entries);
    if (existsSync(fileOf(name)) && readFileSync(fileOf(name), 'utf8') === text) return false;
    writeFileSync(fileOf(name), text);
    return true;
  });
  return [...gone, ...changed.map(([name]) => name)];
}
