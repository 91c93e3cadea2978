const PACKS = 'packs/';

/**
 * Address of the site, with the slash: this module's folder lies directly in it, as source and when built. Workers, which have
 * no document, find it so too.
 */
export const SITE_URL = new URL(import.meta.url).href.replace(/[^/]*\/[^/]*$/, '');

/** Name under which the pack at `path` (as `packs/index.json` has it) is kept: sites that share an origin don't meet. */
export function packKey(path: string, site = SITE_URL): string {
  return encodeURIComponent(new URL(PACKS + path.replace(/\/?$/, ''), site).pathname);
}

/** What every key of this site's packs begins with. */
export function siteKey(site = SITE_URL): string {
  return encodeURIComponent(new URL(PACKS, site).pathname);
}

/** A pack that a file may belong to, and the file's path in it. */
export interface FilePlace {
  readonly key: string;
  readonly path: string;
}

/** Where the file at an absolute address would be kept; the packs it may belong to, shortest path first, since paths may hold slashes. */
export function placesOf(url: string, site = SITE_URL): FilePlace[] {
  const packs = new URL(PACKS, site).href;
  const [plain] = url.split(/[?#]/, 1);
  if (!plain.startsWith(packs)) return [];
  const names = plain.slice(packs.length).split('/');
  return names.slice(1).map((_, at) => ({
    key: packKey(names.slice(0, at + 1).join('/'), site),
    path: names
      .slice(at + 1)
      .map(decodeURIComponent)
      .join('/'),
  }));
}
