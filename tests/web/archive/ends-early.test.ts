import { afterEach, beforeEach, expect, it } from 'vitest';

import { bring, type Fetching } from '../../../web/archive/bring.ts';
import { PassingParts } from '../../../web/archive/part-store.ts';
import { LoopbackArchive, recordOf } from '../../data-scripts/fetch/loopback-archive.ts';

const PATH = recordOf('ZZ000000001');
/** In the middle of a line. */
const EARLY_BYTES = 5001;

let archive: LoopbackArchive;
let url: string;
beforeEach(async () => {
  archive = new LoopbackArchive();
  url = new URL(PATH, await archive.open()).href;
});
afterEach(() => archive.close());

// As where something on the way closes both of its ends properly: the network itself then tells of no fault.
it.each([
  [true, /^5 kB of \d+ kB came$/],
  [false, /^it ends in the middle of a line$/],
])('a file that ends early without a sign is gone on with (length told: %s)', async (told, reason) => {
  archive.lengths = told;
  let asked = 0;
  const fetcher: Fetching['fetcher'] = async (to, init) => {
    const answer = await fetch(to, init);
    if (asked++ > 0) return answer;
    const early = (await answer.arrayBuffer()).slice(0, EARLY_BYTES);
    return new Response(early, { status: answer.status, headers: answer.headers });
  };
  const store = new PassingParts();
  const heard: string[] = [];
  const how = { fetcher, store, tries: 3, backoffMs: 1, silenceMs: 2000 };
  const outcome = await bring(
    { url, most: 1e6 },
    { ...how, met: new Set(), noIfRange: new Set() },
    { bytes: () => {}, again: (why) => heard.push(why) },
  );
  expect(outcome).toBe('whole');
  expect(heard).toEqual([expect.stringMatching(reason)]);
  expect(archive.requestsOf(PATH).map(({ range }) => range)).toEqual([undefined, `bytes=${EARLY_BYTES}-`]);
  expect(await (await store.content(url)).text()).toBe(archive.files.get(PATH)!.toString());
});
