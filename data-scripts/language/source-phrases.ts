import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

import { InputError } from '../../analysis/records/input-error.ts';
import { phrasesInData } from './phrases-in-data.ts';
import { phrasesIn } from './phrases-in-source.ts';
import { parseSource } from './syntax-tree.ts';

/** Folders whose sources speak to people; what commands print stays English. */
const SPEAKING = ['analysis', 'web'];

/** What is said where: for each catalogue's name its English keys in order, each with the sources that say it. */
export type SourcePhrases = ReadonlyMap<string, ReadonlyMap<string, readonly string[]>>;

/** Sources under `root` that speak to people, relative, sorted. */
export function speakingSources(root: string): string[] {
  return SPEAKING.flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.(ts|svelte)$/.test(file) && !file.endsWith('.d.ts'))
      .map((file) => `${folder}/${file.split(path.sep).join('/')}`)
      .sort(),
  );
}

/** The catalogue of a source, one a folder: `web/views/life/x.ts` is in `views-life`, what lies in `web` itself in `page`. */
export function catalogueOf(source: string): string {
  const folder = path.posix.dirname(source);
  return folder === 'web' ? 'page' : folder.replace(/^web\//, '').replaceAll('/', '-');
}

/** Everything the project says under `root`. Throws `InputError` with the file's name where a source can't be read. */
export function findPhrases(root: string): SourcePhrases {
  const found = new Map<string, Map<string, string[]>>();
  const add = (catalogue: string, english: string, source: string): void => {
    const phrases = found.get(catalogue) ?? new Map<string, string[]>();
    const sources = phrases.get(english) ?? [];
    if (!sources.includes(source)) phrases.set(english, [...sources, source]);
    found.set(catalogue, phrases);
  };
  for (const source of speakingSources(root))
    for (const english of phrasesOf(root, source)) add(catalogueOf(source), english, source);
  for (const { english, source } of phrasesInData(root)) add('data-files', english, source);
  return found;
}

function phrasesOf(root: string, source: string): string[] {
  const text = readFileSync(path.join(root, source), 'utf8');
  if (!/\bt`|\bsaid\(/.test(text)) return [];
  try {
    return phrasesIn(parseSource(source, text));
  } catch (error) {
    throw new InputError(`${source}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
