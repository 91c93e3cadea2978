import { cachePrefix, pageLock, type LaterFiles, type SiteFile, type SiteVersion } from '../site-files.ts';

/** Files fetched at the same time while the page is put into its cache. */
const AT_ONCE = 4;

/**
 * The files of one version of the page in a cache of their own. Caches of other versions stay until no open page is of them,
 * so that a page opened before an update finds every part of itself.
 */
export class PageCache {
  readonly #site: SiteVersion;
  readonly #scope: string;
  readonly #caches: CacheStorage;
  readonly #byUrl: ReadonlyMap<string, SiteFile>;

  constructor(site: SiteVersion, scope: string, caches: CacheStorage) {
    this.#site = site;
    this.#scope = scope;
    this.#caches = caches;
    this.#byUrl = new Map(site.files.map((file) => [this.#url(file), file]));
  }

  get name(): string {
    return cachePrefix(this.#scope) + this.#site.version;
  }

  get later(): LaterFiles {
    const files = this.#site.files.filter(({ later }) => later);
    return {
      cache: this.name,
      bytes: this.#site.files.reduce((sum, { bytes }) => sum + bytes, 0),
      files: files.map((file) => ({ url: this.#url(file), bytes: file.bytes, sent: file.sent })),
    };
  }

  /**
   * Puts in all that the page needs at once, and of the rest what an earlier version had already.
   * @throws TypeError where a file can't be had: then this version is not to be used
   */
  async fill(): Promise<void> {
    const cache = await this.#caches.open(this.name);
    const left = [...this.#site.files];
    const work = async (): Promise<void> => {
      for (let file = left.pop(); file; file = left.pop()) await this.#put(cache, file);
    };
    await Promise.all(Array.from({ length: AT_ONCE }, work));
  }

  async #put(cache: Cache, file: SiteFile): Promise<void> {
    const url = this.#url(file);
    if (await cache.match(url)) return;
    const had = file.revision === null ? await this.#inAny(url) : undefined;
    if (!had && file.later) return;
    // A name without a hash may stand for older content in the browser's other cache.
    const answer = had ?? (await fetch(url, { cache: file.revision === null ? 'default' : 'no-cache' }));
    if (!answer.ok) throw new TypeError(`${url}: the server answered ${answer.status}`);
    await cache.put(url, answer);
  }

  /** The file that answers a request, `null` where the request is none of the page's files. */
  async answer(request: Request): Promise<Response> {
    const url = this.#plain(request);
    const cache = await this.#caches.open(this.name);
    return (await cache.match(url)) ?? (await this.#inAny(url)) ?? fetch(request);
  }

  /** True for what this worker answers: the page, and its parts, of whatever version. Packs, ranges and all else go their way. */
  answers(request: Request): boolean {
    if (request.method !== 'GET' || request.headers.has('range')) return false;
    const url = this.#plain(request);
    return this.#byUrl.has(url) || url.startsWith(new URL('assets/', this.#scope).href);
  }

  /**
   * Takes the page's own document again where the same one now comes with other headers, such as a policy that lets in
   * another archive. One that differs belongs to a newer version.
   */
  async refreshHeaders(): Promise<void> {
    const url = new URL('.', this.#scope).href;
    const cache = await this.#caches.open(this.name);
    const [had, now] = await Promise.all([cache.match(url), fetch(url, { cache: 'no-cache' })]);
    if (had && now.ok && (await now.clone().text()) === (await had.text())) await cache.put(url, now);
  }

  /** Removes caches of versions that no open page is of. */
  async tidy(locks: LockManager | undefined): Promise<void> {
    if (!locks) return;
    const held = new Set((await locks.query()).held?.map(({ name }) => name));
    const prefix = cachePrefix(this.#scope);
    for (const name of await this.#caches.keys()) {
      if (!name.startsWith(prefix) || name === this.name) continue;
      const cache = await this.#caches.open(name);
      const inUse = (await cache.keys()).some(({ url }) => held.has(pageLock(url)));
      if (!inUse) await this.#caches.delete(name);
    }
  }

  async #inAny(url: string): Promise<Response | undefined> {
    const prefix = cachePrefix(this.#scope);
    for (const name of await this.#caches.keys()) {
      if (!name.startsWith(prefix)) continue;
      const found = await (await this.#caches.open(name)).match(url);
      if (found) return found;
    }
    return undefined;
  }

  #url({ path }: SiteFile): string {
    return new URL(path === '' ? '.' : path, this.#scope).href;
  }

  /** A request's address as files are kept by: choices in it are the page's own business. */
  #plain({ url }: Request): string {
    const [plain] = url.split(/[?#]/, 1);
    return plain === new URL('index.html', this.#scope).href ? new URL('.', this.#scope).href : plain;
  }
}
