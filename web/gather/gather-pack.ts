import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import { formatBytes, formatCount } from '../format/numbers.ts';
import { GatherClient } from '../workers/gather-client.ts';
import type { PackWish, ToldOfFile } from './brought.ts';
import { keepMade, type Waiting } from './keep-made.ts';
import { ALL_BYTES_MAX, FILES_MAX } from './limits.ts';

/** Files and what to make of them. */
export interface GatherQuestion extends PackWish {
  readonly files: readonly ({ readonly name: string; readonly blob: Blob } & ToldOfFile)[];
}

/**
 * Station files to a pack kept in this browser, whole or not at all. Nothing leaves the machine.
 * @throws InputError in one sentence: a file that can't be used or leaves something open, a station without a place, no room
 */
export async function gatherPack(question: GatherQuestion, waiting: Waiting = {}): Promise<PackIndexEntry> {
  const { files, ...wish } = question;
  checkSizes(files.map(({ blob }) => blob));
  const { onProgress = () => {}, signal } = waiting;
  const client = new GatherClient();
  try {
    const total = files.reduce((sum, { blob }) => sum + blob.size, 0);
    let before = 0;
    for (const [key, file] of files.entries()) {
      const read = before;
      const found = await client.ask(
        'read',
        { key, ...file },
        {
          onProgress: (progress) =>
            onProgress(
              progress.doing === 'reading' ? { ...progress, bytes: read + progress.bytes, total } : progress,
            ),
          signal,
        },
      );
      if (found.kind === 'refused' || found.kind === 'unclear') throw new InputError(found.message);
      before += file.blob.size;
    }
    return await keepMade(client, wish, waiting);
  } finally {
    client.close();
  }
}

/** @throws InputError where there are too many files, or they are too large together */
export function checkSizes(files: readonly Blob[]): void {
  if (files.length > FILES_MAX)
    throw new InputError(
      t`${formatCount(files.length)} files at a time; the limit is ${formatCount(FILES_MAX)}.`,
    );
  const bytes = files.reduce((sum, { size }) => sum + size, 0);
  if (bytes > ALL_BYTES_MAX)
    throw new InputError(
      t`The files have ${formatBytes(bytes)} together; the limit is ${formatBytes(ALL_BYTES_MAX)}.`,
    );
}
