import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { OFFLINE_KEY, OfflineState } from '../../../web/offline/offline-state.svelte.ts';
import type { PackState } from '../../../web/state/pack-state.svelte.ts';
import { memoryStorage } from '../state/memory-storage.ts';
import { PACK } from '../state/sample-pack.ts';

interface Visit {
  readonly connection?: { readonly saveData?: boolean; readonly effectiveType?: string };
  /** What the reader chose in an earlier visit. */
  readonly choice?: 'page' | 'off';
  /** Of the pack that is open. */
  readonly bytes?: number;
}

/** What a visit does unasked, the page's and packs' own work left out. */
async function unasked({ connection, choice, bytes = 1000 }: Visit): Promise<string[]> {
  vi.stubGlobal('navigator', { onLine: true, connection });
  const storage = memoryStorage(choice && { [OFFLINE_KEY]: choice });
  const open = { entry: { ...PACK.entry, bytes } };
  const packs = { kept: [], open, siteReached: true } as unknown as PackState;
  const state = new OfflineState(packs, 'http://localhost/packs/', storage);
  const done: string[] = [];
  let status = 'none';
  Object.defineProperty(state.page, 'status', { get: () => status });
  state.page.begin = async () => void (done.push('page'), (status = 'ready'));
  state.page.leaveOff = async () => void done.push('nothing');
  state.packs.keep = async ({ id }) => (done.push(id), true);
  await state.begin();
  return done;
}

beforeEach(() => void vi.stubGlobal('addEventListener', () => {}));
afterEach(() => vi.unstubAllGlobals());

it('keeps the page, and the pack that is open if it has no more than 20 MB', async () => {
  const { id } = PACK.entry;
  expect(await unasked({ bytes: 20_000_000 })).toEqual(['page', id]);
  expect(await unasked({ bytes: 20_000_001 })).toEqual(['page']);
  expect(await unasked({ bytes: 0 })).toEqual(['page']);
  expect(await unasked({ connection: { saveData: false, effectiveType: '4g' } })).toEqual(['page', id]);
});

it('fetches nothing unasked on a line that saves data or is slow, nor what the reader removed before', async () => {
  expect(await unasked({ connection: { saveData: true } })).toEqual(['nothing']);
  expect(await unasked({ connection: { effectiveType: 'slow-2g' } })).toEqual(['nothing']);
  expect(await unasked({ choice: 'off' })).toEqual(['nothing']);
  expect(await unasked({ choice: 'page' })).toEqual(['page']);
});
