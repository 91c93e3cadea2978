import type { Catalogue } from './catalogue.ts';
import type { Entry } from './po-file.ts';
import type { SourcePhrases } from './source-phrases.ts';

/** What is wrong with a catalogue, a sentence each: nothing where everything said is translated and nothing else is in it. */
export function catalogueFaults(
  catalogue: Catalogue,
  said: SourcePhrases,
  isAsked: (name: string) => boolean,
): string[] {
  const names = new Set([...said.keys(), ...catalogue.keys()].filter(isAsked));
  return [
    ...[...names].sort().flatMap((name) => fileFaults(name, catalogue.get(name) ?? [], said.get(name))),
    ...differentlySaid(catalogue, isAsked),
  ];
}

function fileFaults(
  name: string,
  entries: readonly Entry[],
  said: ReadonlyMap<string, readonly string[]> | undefined,
): string[] {
  const held = new Map(entries.map((entry) => [entry.english, entry]));
  const missing = [...(said ?? [])].filter(([english]) => !held.get(english)?.translation);
  const unused = entries.filter(({ english }) => !said?.has(english));
  return [
    ...missing.map(([english, [source]]) => `${name}.po: no translation of "${english}" (${source})`),
    ...unused.map(({ english }) => `${name}.po: "${english}" is no longer said`),
    ...entries.filter(({ translation }) => translation !== '').flatMap((entry) => entryFaults(name, entry)),
  ];
}

function entryFaults(name: string, { english, translation }: Entry): string[] {
  const faults: string[] = [];
  if (placeholders(english) !== placeholders(translation))
    faults.push(`${name}.po: the values of "${english}" differ in "${translation}"`);
  if (/^\s/.test(english) !== /^\s/.test(translation) || /\s$/.test(english) !== /\s$/.test(translation))
    faults.push(`${name}.po: the spaces at the ends of "${english}" differ in "${translation}"`);
  return faults;
}

function placeholders(text: string): string {
  return [...new Set(text.match(/\{\d+\}/g))].sort().join();
}

/** All files go into one catalogue, so a phrase has one translation. */
function differentlySaid(catalogue: Catalogue, isAsked: (name: string) => boolean): string[] {
  const first = new Map<string, { readonly name: string; readonly translation: string }>();
  return [...catalogue].flatMap(([name, entries]) =>
    entries.flatMap(({ english, translation }) => {
      if (translation === '') return [];
      const other = first.get(english);
      if (!other) first.set(english, { name, translation });
      if (!other || other.translation === translation || !(isAsked(name) || isAsked(other.name))) return [];
      return [
        `"${english}" is "${other.translation}" in ${other.name}.po and "${translation}" in ${name}.po`,
      ];
    }),
  );
}
