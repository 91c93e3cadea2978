/** A file of the built page, as the build lists it for the worker that serves the page without network. */
export interface SiteFile {
  /** Path below the site's address; the page itself is the empty one. */
  readonly path: string;
  /** Of the content; `null` where the name already carries one, so that the file never changes. */
  readonly revision: string | null;
  readonly bytes: number;
  /** What travels from a host that compresses, bytes. */
  readonly sent: number;
  /** True for what is fetched only once the first screen is done, with the reader told: the database engine. */
  readonly later: boolean;
}

/** What the worker keeps, and under which name. */
export interface SiteVersion {
  /** Of all content: two builds of the same files have the same. */
  readonly version: string;
  readonly files: readonly SiteFile[];
}

/** Beginning of the names of all caches of the site at `scope`. */
export function cachePrefix(scope: string): string {
  return `citrus-winters ${new URL(scope).pathname} `;
}

/** Name of the lock that an open page holds; `entry` is the address of its first script, which tells its version. */
export function pageLock(entry: string): string {
  return `citrus-winters page ${entry}`;
}

/** What the page asks of the worker. */
export type WorkerQuestion =
  /** Which files are for later, and the cache they go to: answered with {@link LaterFiles}, `null` where the others can't be had. */
  | { readonly kind: 'later' }
  /** A newer worker that waits shall take over. */
  | { readonly kind: 'use' }
  /** Caches of versions that no open page is of shall go. */
  | { readonly kind: 'tidy' };

/** The files for later, by absolute address. */
export interface LaterFiles {
  readonly cache: string;
  /** Of all files of the version, those for later included, bytes on the device. */
  readonly bytes: number;
  readonly files: readonly { readonly url: string; readonly bytes: number; readonly sent: number }[];
}
