import { SvelteMap } from 'svelte/reactivity';
import { GHCN_DAILY_SOURCE } from '../../analysis/archive/layout.ts';
import type { NearbyStation } from '../../analysis/archive/stations-nearby.ts';
import { postcodesNear, US_POSTCODES_SOURCES } from '../../analysis/archive/us-postcodes.ts';
import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackIndexEntry, PackPlaces } from '../../analysis/records/pack.ts';
import type { Fetching } from './bring.ts';
import { failure } from './failure.ts';
import { fetchStations, POLITENESS, recordUrl, type StationProgress } from './fetch-stations.ts';
import type { MakePack } from './gather-port.ts';

/** What is to be fetched and made. */
export interface FetchWish {
  readonly stations: readonly NearbyStation[];
  readonly base: string;
  readonly title: string;
}

/** What this needs of the outside. */
export interface FetchParts {
  readonly how: Omit<Fetching, 'signal'>;
  readonly make: MakePack;
  readonly loadPostcodes: () => Promise<PackPlaces['postcodes']>;
}

/** How far it has come. */
export type FetchStatus = 'idle' | 'fetching' | 'making' | 'stopped' | 'failed' | 'made';

/** Fetching records of stations, and the pack made of them. */
export class FetchState {
  #status = $state<FetchStatus>('idle');
  #error = $state<string | null>(null);
  #making = $state.raw<{ readonly doing: string; readonly share: number | null } | null>(null);
  #made = $state.raw<PackIndexEntry | null>(null);
  /** How far each station has come. */
  readonly stations = new SvelteMap<string, StationProgress>();
  #stop: AbortController | null = null;
  readonly #parts: FetchParts;

  constructor(parts: FetchParts) {
    this.#parts = parts;
  }

  get status(): FetchStatus {
    return this.#status;
  }
  get error(): string | null {
    return this.#error;
  }
  get making(): { readonly doing: string; readonly share: number | null } | null {
    return this.#making;
  }
  get made(): PackIndexEntry | null {
    return this.#made;
  }
  get busy(): boolean {
    return this.#status === 'fetching' || this.#status === 'making';
  }

  /** Fetches what isn't there yet and makes the pack; results in its entry, `null` when it failed or was stopped. */
  async run(wish: FetchWish): Promise<PackIndexEntry | null> {
    if (this.busy) return null;
    const stop = (this.#stop = new AbortController());
    this.#status = 'fetching';
    this.#error = this.#making = this.#made = null;
    this.stations.clear();
    try {
      const how = { ...this.#parts.how, signal: stop.signal };
      const ids = wish.stations.map(({ id }) => id);
      const there = await fetchStations(ids, wish.base, how, POLITENESS, (id, progress) =>
        this.stations.set(id, progress),
      );
      if (there.length === 0)
        throw new InputError(t`None of the stations chosen has a record that can be used.`);
      this.#status = 'making';
      this.#made = await this.#make(wish, there, stop.signal);
      this.#status = 'made';
      for (const id of ids) await how.store.discard(recordUrl(id, wish.base)).catch(() => {});
      return this.#made;
    } catch (error) {
      this.#error = await failure(error, stop.signal);
      this.#status = this.#error === null ? 'stopped' : 'failed';
      return null;
    } finally {
      this.#stop = null;
    }
  }

  /** Ends fetching or making; what has come stays for the next time. */
  stop(): void {
    this.#stop?.abort(new DOMException('Stopped by the reader.', 'AbortError'));
  }

  async #make(wish: FetchWish, there: readonly string[], signal: AbortSignal): Promise<PackIndexEntry> {
    const stations = wish.stations.filter(({ id }) => there.includes(id));
    const files: { name: string; blob: Blob }[] = [];
    for (const { id } of stations) {
      files.push({ name: `${id}.csv`, blob: await this.#parts.how.store.content(recordUrl(id, wish.base)) });
    }
    const postcodes = await this.#postcodes(stations);
    return this.#parts.make(
      {
        title: wish.title,
        invented: false,
        files,
        stations: stations.map(({ id, name, lat, lon, elevationM }) => ({ id, name, lat, lon, elevationM })),
        sources: [GHCN_DAILY_SOURCE, ...(postcodes.length > 0 ? US_POSTCODES_SOURCES : [])],
        join: null,
        ...(postcodes.length > 0 ? { places: { postcodes, towns: [] } } : {}),
      },
      (doing, share) => (this.#making = { doing, share }),
      signal,
    );
  }

  /** ZIP codes near stations of the United States; a list that doesn't come is no reason to have no pack. */
  async #postcodes(stations: readonly NearbyStation[]): Promise<PackPlaces['postcodes']> {
    const american = stations.filter(({ id }) => /^(US|RQ|VQ)/.test(id));
    if (american.length === 0) return [];
    return postcodesNear(await this.#parts.loadPostcodes().catch(() => []), american);
  }
}
