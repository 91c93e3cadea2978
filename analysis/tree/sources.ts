import { said } from '../language/t.ts';
import sources from './sources.json';

/** Full name of a source key, the key itself when unknown. */
export function sourceOf(key: string): string {
  const name = (sources as Record<string, string>)[key];
  return name === undefined ? key : said(name);
}
