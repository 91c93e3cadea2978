import { SvelteMap } from 'svelte/reactivity';
import { firstChoice } from '../../analysis/archive/first-choice.ts';
import { stationsNearby, type NearbyStation } from '../../analysis/archive/stations-nearby.ts';
import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import type { Storage } from '../state/kept.ts';
import { checkBase, keepBase, startBase } from './archive-base.ts';
import type { ArchiveDatabase, KeptIndex } from './archive-database.ts';
import type { ArchivePlace } from './archive-place.ts';
import { FetchState, type FetchParts } from './fetch-state.svelte.ts';
import { IndexState } from './index-state.svelte.ts';

/** Limits of what can be asked for, and where the page begins. */
export const KM = { min: 20, max: 500, start: 100 } as const;
export const MOST = { min: 3, max: 40, start: 12 } as const;

/** What the state is made of. */
export interface ArchiveParts extends FetchParts {
  readonly archives: readonly string[];
  readonly storage: Storage | null;
  readonly database: ArchiveDatabase | null;
  readonly keptIndex: KeptIndex | null;
}

/** What the reader asks of the archive, and what came of it. */
export class ArchiveState {
  readonly archives: readonly string[];
  readonly index: IndexState;
  readonly fetching: FetchState;
  #base = $state<string | null>(null);
  #baseProblem = $state<string | null>(null);
  #place = $state.raw<ArchivePlace | null>(null);
  #km = $state<number>(KM.start);
  #most = $state<number>(MOST.start);
  /** What the reader ticked and unticked against the first choice. */
  readonly #changed = new SvelteMap<string, boolean>();
  #title = $state<string | null>(null);
  readonly #parts: ArchiveParts;

  constructor(parts: ArchiveParts) {
    this.#parts = parts;
    this.archives = parts.archives;
    this.#base = startBase(parts.archives, parts.storage);
    this.index = new IndexState(parts.database, parts.keptIndex);
    this.fetching = new FetchState(parts);
  }

  /** Base address in use; `null` where the site allows none. */
  get base(): string | null {
    return this.#base;
  }
  get baseProblem(): string | null {
    return this.#baseProblem;
  }
  get place(): ArchivePlace | null {
    return this.#place;
  }
  get km(): number {
    return this.#km;
  }
  get most(): number {
    return this.#most;
  }
  /** False where what is fetched lasts no longer than the visit. */
  get lasting(): boolean {
    return this.#parts.database !== null;
  }

  /** Stations within the distance, near and long ones first. */
  readonly nearby = $derived.by((): readonly NearbyStation[] => {
    const index = this.index.kept?.index;
    return index && this.#place ? stationsNearby(index, this.#place, this.#km) : [];
  });
  readonly #first = $derived(firstChoice(this.nearby, this.#most));
  readonly chosen = $derived(this.nearby.filter(({ id }) => this.#changed.get(id) ?? this.#first.has(id)));
  /** Bytes that fetching the chosen ones may take, by estimate. */
  readonly expectedBytes = $derived(this.chosen.reduce((sum, { expectedBytes }) => sum + expectedBytes, 0));
  /** How the pack will be called. */
  get title(): string {
    return this.#title ?? (this.#place ? t`Around ${this.#place.label}` : '');
  }

  isChosen(id: string): boolean {
    return this.#changed.get(id) ?? this.#first.has(id);
  }
  setPlace(place: ArchivePlace): void {
    this.#place = place;
    this.#title = null;
    this.#changed.clear();
  }
  setElevation(elevationM: number | null): void {
    if (this.#place) this.#place = { ...this.#place, elevationM };
  }
  setKm(km: number): void {
    this.#km = Math.min(KM.max, Math.max(KM.min, km));
  }
  /** How many are ticked at first; what was ticked by hand begins anew. */
  setMost(most: number): void {
    this.#most = Math.min(MOST.max, Math.max(MOST.min, most));
    this.#changed.clear();
  }
  setTitle(title: string): void {
    this.#title = title.trim() === '' ? null : title.trim().slice(0, 80);
  }
  tick(id: string, on: boolean): void {
    this.#changed.set(id, on);
  }

  setBase(typed: string): void {
    try {
      this.#base = checkBase(typed, this.archives);
      this.#baseProblem = null;
      keepBase(this.#base, this.archives, this.#parts.storage);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      this.#baseProblem = error.message;
    }
  }

  async readIndex(): Promise<void> {
    if (this.#base !== null) await this.index.read(this.#base, this.#parts.how);
  }

  /** Fetches the chosen stations and makes the pack of them. */
  async fetch(): Promise<PackIndexEntry | null> {
    if (this.#base === null || this.chosen.length === 0) return null;
    return this.fetching.run({ stations: this.chosen, base: this.#base, title: this.title });
  }
}
