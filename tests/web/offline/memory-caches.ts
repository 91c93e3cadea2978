/** The browser's caches in memory, as far as `web/offline` uses them. */
export class MemoryCaches {
  readonly caches = new Map<string, MemoryCache>();

  async open(name: string): Promise<MemoryCache> {
    const cache = this.caches.get(name) ?? new MemoryCache();
    this.caches.set(name, cache);
    return cache;
  }

  async keys(): Promise<string[]> {
    return [...this.caches.keys()];
  }

  async delete(name: string): Promise<boolean> {
    return this.caches.delete(name);
  }
}

class MemoryCache {
  readonly #answers = new Map<string, Response>();

  async match(url: string): Promise<Response | undefined> {
    return this.#answers.get(url)?.clone();
  }

  async put(url: string, answer: Response): Promise<void> {
    this.#answers.set(url, answer);
  }

  async keys(): Promise<{ url: string }[]> {
    return [...this.#answers.keys()].map((url) => ({ url }));
  }
}
