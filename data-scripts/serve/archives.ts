import { DEFAULT_ARCHIVE } from '../../analysis/archive/layout.ts';
import { InputError } from '../../analysis/records/input-error.ts';

/** File of the site that tells the page its settings; a static host carries it as it lies in `web/public`. */
export const SITE_FILE = 'site.json';

/**
 * Checks the base addresses of the archives that the page may fetch records from, each made to end in a slash; the
 * public archive where none are given. An empty list is allowed: then the page fetches from nowhere.
 * @throws InputError naming the address that is none
 */
export function checkArchives(addresses: readonly string[] = [DEFAULT_ARCHIVE]): readonly string[] {
  const bases = addresses.map((address) => {
    const url = URL.canParse(address) ? new URL(address) : undefined;
    if (!url || !/^https?:$/.test(url.protocol) || url.username !== '' || url.password !== '') {
      throw new InputError(
        `"${address}" is no base address of an archive: it must begin with https:// or http:// and name no user`,
      );
    }
    return `${url.origin}${url.pathname.replace(/\/?$/, '/')}`;
  });
  return [...new Set(bases)];
}

/** What the page is told. */
export function siteSettings(archives: readonly string[]): string {
  return `${JSON.stringify({ archives }, null, 2)}\n`;
}

/** Origins of base addresses, for a `connect-src`. */
export function originsOf(archives: readonly string[]): readonly string[] {
  return [...new Set(archives.map((address) => new URL(address).origin))];
}
