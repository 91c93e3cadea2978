import { readFileSync } from 'node:fs';
import path from 'node:path';

import { InputError } from '../../analysis/records/input-error.ts';

/**
 * Fields of data files that people read; the code says them with `said(...)`. `*` stands for every entry of a list or an object.
 */
export const READ_FIELDS: Readonly<Record<string, readonly string[]>> = {
  'analysis/tree/type-names.json': ['*'],
  'analysis/tree/sources.json': ['*'],
  'analysis/cover/measures.json': ['*.name', '*.about', '*.cautions.*'],
  'analysis/cover/cover-sources.json': ['*'],
};

/** The English texts of those fields with the file each stands in. Throws `InputError` where a field holds something else than text. */
export function phrasesInData(root: string): { readonly english: string; readonly source: string }[] {
  return Object.entries(READ_FIELDS).flatMap(([source, fields]) => {
    const data: unknown = JSON.parse(readFileSync(path.join(root, source), 'utf8'));
    return fields
      .flatMap((field) => textsAt(data, field.split('.'), `${source}, ${field}`))
      .map((english) => ({ english, source }));
  });
}

function textsAt(value: unknown, steps: readonly string[], where: string): string[] {
  if (value === undefined) return [];
  const [step, ...rest] = steps;
  if (step === undefined) {
    if (typeof value !== 'string') throw new InputError(`${where} is not a text`);
    return [value];
  }
  if (typeof value !== 'object' || value === null) throw new InputError(`${where} leads nowhere`);
  const next = step === '*' ? Object.values(value) : [(value as Record<string, unknown>)[step]];
  return next.flatMap((inner) => textsAt(inner, rest, where));
}
