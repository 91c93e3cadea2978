import type { PackLeaveOutDetails } from '../../analysis/records/pack.ts';
import type { Fetcher } from './load-pack.ts';
import type { OpenPack } from './open-pack.ts';
import { reach } from './reach.ts';

const NAME = 'leave-out.json';

/**
 * What charts draw of the stations left out; `null` where the pack left none out.
 * @throws InputError with one sentence for the reader when the file is not reached or refused
 */
export async function loadLeaveOut(pack: OpenPack, fetcher: Fetcher): Promise<PackLeaveOutDetails | null> {
  if (!pack.meta.files.some(({ path }) => path === NAME)) return null;
  const response = await reach(pack.url + NAME, fetcher);
  return (await response.json()) as PackLeaveOutDetails;
}
