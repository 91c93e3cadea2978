import { said } from '../language/t.ts';
import names from './type-names.json';

const NAMES = new Map<string, string>(Object.entries(names));

/** Name of a type by its id, `undefined` when there is none. Apart from the catalogue, so that a page can say it before that has come. */
export function typeName(id: string): string | undefined {
  const name = NAMES.get(id);
  return name === undefined ? undefined : said(name);
}
