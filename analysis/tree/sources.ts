import sources from './sources.json';

/** Full name of a source key, the key itself when unknown. */
export function sourceOf(key: string): string {
  return (sources as Record<string, string>)[key] ?? key;
}
