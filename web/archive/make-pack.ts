import { t } from '../../analysis/language/t.ts';
import { formatCount } from '../format/numbers.ts';
import type { GatherProgress } from '../gather/brought.ts';
import { gatherPack } from '../gather/gather-pack.ts';
import type { MakePack } from './gather-port.ts';

/** Makes and keeps the pack as it is made of the reader's own files. */
export const makePack: MakePack = (pack, heard, signal) =>
  gatherPack(pack, { signal, onProgress: (progress) => heard(...inWords(progress)) });

function inWords(progress: GatherProgress): [doing: string, share: number | null] {
  if (progress.doing === 'reading')
    return [t`Reading the records`, progress.bytes / Math.max(1, progress.total)];
  if (progress.doing === 'fetching') return [t`Fetching what the database needs`, null];
  if (progress.doing === 'keeping') return [t`Writing the pack`, null];
  const [done, all] = [formatCount(progress.stations), formatCount(progress.total)];
  return [
    t`Working out the nights: ${done} of ${all} stations`,
    progress.stations / Math.max(1, progress.total),
  ];
}
