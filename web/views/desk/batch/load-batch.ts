import { askAllPostcodes, locateBatch } from '../../../../analysis/answer/batch-places.ts';
import { batchText, readBatch } from '../../../../analysis/answer/batch-read.ts';
import { BATCH_LIMITS } from '../../../../analysis/answer/batch.ts';
import { byLine } from '../../../../analysis/answer/batch-table.ts';
import { t } from '../../../../analysis/language/t.ts';
import { InputError } from '../../../../analysis/records/input-error.ts';
import type { OpenPack } from '../../../data/open-pack.ts';
import { formatBytes, formatCount } from '../../../format/numbers.ts';
import type { BatchLoaded } from '../../../state/batch-state.svelte.ts';

type PlacesOfPack = Pick<OpenPack, 'url' | 'places'>;

/** A file of the reader's. @throws InputError when it is too large or can't be used */
export async function loadFile(file: File, pack: PlacesOfPack): Promise<BatchLoaded> {
  if (file.size > BATCH_LIMITS.bytes)
    throw new InputError(
      t`${file.name} has ${formatBytes(file.size)}; at most ${formatBytes(BATCH_LIMITS.bytes)} are read.`,
    );
  return loadText(batchText(new Uint8Array(await file.arrayBuffer())), file.name, pack);
}

/** Text of a table. @throws InputError when it can't be used */
export function loadText(text: string, name: string, { url, places }: PlacesOfPack): BatchLoaded {
  const { asks, bad, columns } = readBatch(text, name);
  const located = locateBatch(asks, places);
  return { ...located, name, packUrl: url, bad: byLine([...bad, ...located.bad]), ignored: columns.ignored };
}

/** All postcodes of the open pack. @throws InputError when there are more than are answered at once */
export function loadPostcodes({ url, places }: PlacesOfPack): BatchLoaded {
  const { length } = places.postcodes;
  if (length > BATCH_LIMITS.rows)
    throw new InputError(
      t`The pack has ${formatCount(length)} postcodes; at most ${formatCount(BATCH_LIMITS.rows)} are answered at once. Bring a file with those that matter.`,
    );
  return {
    ...locateBatch(askAllPostcodes(places), places),
    name: t`All postcodes`,
    packUrl: url,
    ignored: [],
  };
}
