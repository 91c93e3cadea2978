import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { keep, type Storage } from '../state/kept.ts';
import type { Fetcher } from './ask.ts';

const KEPT_KEY = 'archive-base';

/** Base addresses of archives that this site allows, as its `site.json` lists them, first the one it proposes. */
export async function loadArchives(site: string, fetcher: Fetcher): Promise<readonly string[]> {
  const url = new URL('site.json', site).href;
  let answer: unknown;
  try {
    const response = await fetcher(url, {});
    if (!response.ok) throw new Error(String(response.status));
    answer = await response.json();
  } catch {
    throw new InputError(t`site.json, which lists the archives this site allows, could not be read.`);
  }
  const listed = (answer as { archives?: unknown } | null)?.archives;
  if (!Array.isArray(listed)) throw new InputError(t`site.json of this site lists no archives.`);
  return listed
    .filter((entry): entry is string => typeof entry === 'string')
    .map((entry) => whole(entry, site));
}

/**
 * The base address someone typed, made to end in a slash.
 * @throws InputError when it is no address, or none that the site allows: the browser would refuse it anyway
 */
export function checkBase(typed: string, allowed: readonly string[]): string {
  if (!/^https?:\/\//i.test(typed.trim()) || !URL.canParse(typed.trim())) {
    throw new InputError(t`“${typed}” is no address: it must begin with https:// or http://.`);
  }
  const base = whole(typed.trim(), typed.trim());
  if (allowed.some((entry) => base.startsWith(entry))) return base;
  throw new InputError(
    t`This site doesn’t allow ${base}: whoever runs it must add the address to ARCHIVES of its server (or to site.json and the connect-src of its headers).`,
  );
}

/** The address used last time, where the site still allows it; else the one it proposes. `null`: it allows none. */
export function startBase(allowed: readonly string[], storage: Storage | null): string | null {
  try {
    return checkBase(storage?.getItem(KEPT_KEY) ?? '', allowed);
  } catch {
    return allowed[0] ?? null;
  }
}

/** Remembers the address for the next visit; the site's own proposal needs no memory. */
export function keepBase(base: string, allowed: readonly string[], storage: Storage | null): void {
  keep(storage, KEPT_KEY, base === allowed[0] ? null : base);
}

function whole(address: string, site: string): string {
  const url = new URL(address, site);
  return `${url.origin}${url.pathname.replace(/\/?$/, '/')}`;
}
