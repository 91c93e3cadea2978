import { mount } from 'svelte';
import { tidyKept } from '../kept/kept-packs.ts';
import type { PageState } from '../state/page.svelte.ts';
import OfflineLine from './OfflineLine.svelte';
import { OfflineState } from './offline-state.svelte.ts';
import { holdPageVersion } from './page-worker-port.ts';

/** Browsers that have no idle time get this, ms. */
const REST_MS = 2000;

/** Starts all that has to do with working without network, once the first screen is done. */
export async function beginOffline(page: PageState): Promise<void> {
  if (page.offline) return;
  holdPageVersion();
  const base = new URL('packs/', document.baseURI).href;
  const offline = new OfflineState(page.packs, base, page.storage);
  page.offline = offline;
  const masthead = document.querySelector('.masthead');
  if (masthead) mount(OfflineLine, { target: masthead, props: { page, offline } });
  await page.packs.lookForKept();
  await rest();
  await offline.begin();
  await tidyKept();
}

function rest(): Promise<void> {
  return new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve(), { timeout: 2 * REST_MS });
    else setTimeout(resolve, REST_MS);
  });
}
