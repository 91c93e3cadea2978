import { t } from '../../analysis/language/t.ts';
import { readRecords, type FileReadings } from '../../analysis/read/read-records.ts';
import { shippedColumnMaps } from '../../analysis/read/shipped-column-maps.ts';
import { LIST_LONGEST, readStationList, type StationList } from '../../analysis/read/station-list.ts';
import { InputError, UnclearError, UnknownFormatError } from '../../analysis/records/input-error.ts';
import { formatBytes } from '../format/numbers.ts';
import type { BroughtFile, FoundFile } from './brought.ts';
import { FILE_BYTES_MAX, TEXT_BYTES_MAX } from './limits.ts';

/** A file read: what is told of it, and what it holds. */
export interface ReadFile {
  readonly found: FoundFile;
  readonly readings: FileReadings | null;
  readonly list: StationList | null;
}

/**
 * Reads one file: readings in any format known, or a list of stations. A file that can't be used gives a sentence, not an error.
 * @param onBytes bytes read so far, packed as they are; what it gives is waited for
 * @param signal ends the reading with its reason
 */
export async function readBrought(
  { name, blob, unit, dateOrder }: BroughtFile,
  onBytes: (bytes: number) => void | Promise<void>,
  signal: AbortSignal,
): Promise<ReadFile> {
  const without = (found: FoundFile): ReadFile => ({ found, readings: null, list: null });
  if (blob.size > FILE_BYTES_MAX) {
    const most = formatBytes(FILE_BYTES_MAX);
    return without({
      kind: 'refused',
      message: t`${name} has ${formatBytes(blob.size)}; the limit for one file is ${most}.`,
    });
  }
  const maps = shippedColumnMaps();
  try {
    const readings = await readRecords(watched(blob, onBytes, signal), {
      fileName: name,
      unit: unit ?? null,
      dateOrder: dateOrder ?? null,
      maps,
      mostBytes: TEXT_BYTES_MAX,
    });
    return { found: foundIn(readings), readings, list: null };
  } catch (error) {
    if (signal.aborted || !(error instanceof InputError)) throw error;
    if (error instanceof UnclearError)
      return without({ kind: 'unclear', asks: error.asks, message: error.message });
    if (error instanceof UnknownFormatError && blob.size <= LIST_LONGEST) {
      const list = await listIn(blob, name, maps);
      if (list) return { found: { kind: 'list', stations: list.byId.size }, readings: null, list };
    }
    return without({ kind: 'refused', message: error.message });
  }
}

function foundIn({ title, unit, daily, hourly, rows, badRows, notes }: FileReadings): FoundFile {
  return {
    kind: 'readings',
    format: title,
    unit,
    hourly: hourly.length > 0,
    rows,
    stations: [...daily, ...hourly].map(({ station }) => station),
    badRows,
    notes,
  };
}

/** The stations a file lists; `null` where it is no list of stations. */
async function listIn(
  blob: Blob,
  name: string,
  maps: ReturnType<typeof shippedColumnMaps>,
): Promise<StationList | null> {
  try {
    return readStationList(await blob.text(), name, null, maps);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function watched(
  blob: Blob,
  onBytes: (bytes: number) => void | Promise<void>,
  signal: AbortSignal,
): ReadableStream<Uint8Array> {
  let bytes = 0;
  const count = new TransformStream<Uint8Array, Uint8Array>({
    async transform(chunk, controller) {
      bytes += chunk.length;
      await onBytes(bytes);
      signal.throwIfAborted();
      controller.enqueue(chunk);
    },
  });
  return blob.stream().pipeThrough(count);
}
