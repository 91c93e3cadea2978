import { SvelteMap } from 'svelte/reactivity';
import { t } from '../../../../analysis/language/t.ts';
import { InputError } from '../../../../analysis/records/input-error.ts';
import type { PackIndexEntry } from '../../../../analysis/records/pack.ts';
import type { LocatedStation } from '../../../../analysis/records/station.ts';
import type { ExaminedStation, FoundFile, GatherProgress, ToldOfFile } from '../../../gather/brought.ts';
import { checkSizes } from '../../../gather/gather-pack.ts';
import { packAmong, type FolderFile } from '../../../gather/brought-folder.ts';
import { keepMade } from '../../../gather/keep-made.ts';
import { GatherClient } from '../../../workers/gather-client.ts';

/** A file brought to the page. */
export interface OwnFile {
  readonly key: number;
  readonly name: string;
  readonly blob: Blob;
  readonly told: ToldOfFile;
  /** `null` while it waits or is read. */
  readonly found: FoundFile | null;
}

/** What of the files the page asks next. */
export interface OwnWish {
  readonly title: string;
  readonly join: string | null;
}

/** Station files on their way into a pack: what was found in each, what is still to be told, how far the work is. */
export class OwnState {
  #files = $state.raw<readonly OwnFile[]>([]);
  #stations = $state.raw<readonly ExaminedStation[]>([]);
  #progress = $state.raw<GatherProgress | null>(null);
  #error = $state<string | null>(null);
  #busy = $state(false);
  readonly #told = new SvelteMap<string, LocatedStation>();
  #client = new GatherClient();
  #stopper: AbortController | null = null;
  #nextKey = 1;
  /** Files the worker is still to be told to let go of. */
  readonly #forgotten: number[] = [];

  get files(): readonly OwnFile[] {
    return this.#files;
  }
  get stations(): readonly ExaminedStation[] {
    return this.#stations;
  }
  /** True while something is at work. */
  get busy(): boolean {
    return this.#busy;
  }
  /** How far it is; `null` before the first report. */
  get progress(): GatherProgress | null {
    return this.#progress;
  }
  get error(): string | null {
    return this.#error;
  }
  /** Stations whose place nobody has told. */
  readonly unplaced = $derived.by(() => this.#stations.filter(({ record }) => record === null));
  /** True once nothing is left to ask or to read. */
  readonly ready = $derived.by(
    () =>
      this.#stations.length > 0 &&
      this.unplaced.length === 0 &&
      this.#files.every(({ found }) => found !== null && found.kind !== 'unclear'),
  );

  /** Takes files: a pack's folder is checked and kept at once, its entry given back; other files are read. */
  async add(files: readonly FolderFile[]): Promise<PackIndexEntry | null> {
    const folder = packAmong(files);
    if (folder !== null) {
      return this.#working(async (signal) => {
        const { keepFolder } = await import('../../../gather/keep-folder.ts');
        return keepFolder(files, folder, this.#waiting(signal));
      });
    }
    await this.#working(async (signal) => {
      checkSizes([...this.#files.map(({ blob }) => blob), ...files.map(({ file }) => file)]);
      const added = files.map(({ path, file }): OwnFile => ({
        key: this.#nextKey++,
        name: path.slice(path.lastIndexOf('/') + 1),
        blob: file,
        told: {},
        found: null,
      }));
      this.#files = [...this.#files, ...added];
      await this.#readAll(signal);
    });
    return null;
  }

  /** Tells what a file leaves open, and reads it again. */
  async tell(key: number, told: ToldOfFile): Promise<void> {
    await this.#working(async (signal) => {
      this.#files = this.#files.map((file) =>
        file.key === key ? { ...file, told: { ...file.told, ...told }, found: null } : file,
      );
      await this.#readAll(signal);
    });
  }

  /** Tells where a station stands. */
  async place(station: LocatedStation): Promise<void> {
    this.#told.set(station.id, station);
    await this.#working((signal) => this.#examine(signal));
  }

  async remove(key: number): Promise<void> {
    this.#files = this.#files.filter((file) => file.key !== key);
    await this.#working(async (signal) => {
      await this.#client.ask('forget', { key });
      await this.#examine(signal);
    });
  }

  /** Makes a pack of the files and keeps it; the files are let go of then. `null` where it failed or was stopped. */
  async use({ title, join }: OwnWish): Promise<PackIndexEntry | null> {
    const entry = await this.#working((signal) =>
      keepMade(
        this.#client,
        { title, invented: false, stations: [...this.#told.values()], sources: [OWN_SOURCE], join },
        this.#waiting(signal),
      ),
    );
    if (entry) this.clear();
    return entry;
  }

  cancel(): void {
    this.#stopper?.abort();
  }

  /** Lets go of all files. */
  clear(): void {
    this.close();
    this.#files = [];
    this.#stations = [];
    this.#told.clear();
    this.#error = null;
  }

  /** Ends what is at work. */
  close(): void {
    this.cancel();
    this.#client.close();
  }

  async #readAll(signal: AbortSignal): Promise<void> {
    const waiting = this.#files.filter(({ found }) => found === null);
    const total = waiting.reduce((sum, { blob }) => sum + blob.size, 0);
    let before = 0;
    try {
      for (const { key, name, blob, told } of waiting) {
        const onProgress = (progress: GatherProgress): void => {
          if (progress.doing === 'reading')
            this.#progress = { doing: 'reading', bytes: before + progress.bytes, total };
        };
        const found = await this.#client.ask('read', { key, name, blob, ...told }, { onProgress, signal });
        this.#files = this.#files.map((file) => (file.key === key ? { ...file, found } : file));
        before += blob.size;
      }
    } finally {
      // What was stopped before it was read isn't in the list, as if it had not been brought; the worker may have read it since.
      this.#forgotten.push(...this.#files.filter(({ found }) => found === null).map(({ key }) => key));
      this.#files = this.#files.filter(({ found }) => found !== null);
    }
    await this.#examine(signal);
  }

  async #examine(signal: AbortSignal): Promise<void> {
    const stations = [...this.#told.values()];
    for (const key of this.#forgotten.splice(0)) await this.#client.ask('forget', { key });
    this.#stations = await this.#client.ask('examine', { stations }, this.#waiting(signal));
  }

  #waiting(signal: AbortSignal): { onProgress: (progress: GatherProgress) => void; signal: AbortSignal } {
    return { onProgress: (progress) => (this.#progress = progress), signal };
  }

  /** One thing at a time; `null` where it failed, with a sentence, or was stopped. */
  async #working<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T | null> {
    this.#stopper?.abort();
    const stopper = new AbortController();
    this.#stopper = stopper;
    this.#busy = true;
    this.#error = null;
    try {
      return await work(stopper.signal);
    } catch (error) {
      if (stopper.signal.aborted) return null;
      this.#error =
        error instanceof InputError
          ? error.message
          : t`Something went wrong while the files were read: ${String(error)}`;
      return null;
    } finally {
      if (this.#stopper === stopper) {
        this.#stopper = null;
        this.#busy = false;
        this.#progress = null;
      }
    }
  }
}

const OWN_SOURCE = {
  name: t`Station files brought to this page`,
  licence: t`not stated: ask the publisher before passing the pack on`,
  attribution: t`Publisher not stated`,
};
