import type { Storage } from '../state/kept.ts';
import { loadArchives } from './archive-base.ts';
import { ArchiveDatabase } from './archive-database.ts';
import { ArchiveState } from './archive-state.svelte.ts';
import { PATIENCE } from './bring.ts';
import { loadPostcodes } from './load-postcodes.ts';
import { makePack } from './make-pack.ts';
import { PassingParts } from './part-store.ts';

/**
 * The archive as this site allows it, with what an earlier visit has kept. Only this site is asked.
 * @throws InputError when the site's list of archives can't be read
 */
export async function openArchive(storage: Storage | null): Promise<ArchiveState> {
  const fetcher: typeof fetch = (input, init) => fetch(input, init);
  const archives = await loadArchives(document.baseURI, fetcher as (url: string) => Promise<Response>);
  const database = await ArchiveDatabase.open();
  return new ArchiveState({
    archives,
    storage,
    database,
    keptIndex: (await database?.keptIndex().catch(() => null)) ?? null,
    how: {
      fetcher: fetcher as (url: string, init: RequestInit) => Promise<Response>,
      store: database ?? new PassingParts(),
      met: new Set(),
      noIfRange: new Set(),
      ...PATIENCE,
    },
    make: makePack,
    loadPostcodes,
  });
}
