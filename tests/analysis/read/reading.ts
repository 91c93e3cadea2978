import { gzipSync } from 'node:zlib';
import { readRecords, type FileReadings, type ReadOptions } from '../../../analysis/read/read-records.ts';

/** A stream of the bytes, cut into pieces of `size`. */
export function streamOf(bytes: Uint8Array, size = bytes.length || 1): ReadableStream<Uint8Array> {
  let at = 0;
  return new ReadableStream<Uint8Array>({
    pull(controller) {
      if (at >= bytes.length) return controller.close();
      controller.enqueue(bytes.slice(at, at + size));
      at += size;
    },
  });
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
export const gzipOf = (text: string): Uint8Array => new Uint8Array(gzipSync(text));

/** Reads a text as if it were a file. */
export function readText(text: string, options: Partial<ReadOptions> = {}): Promise<FileReadings> {
  return readRecords(streamOf(bytesOf(text)), { fileName: 'invented.csv', ...options });
}

/** The readings of a daily file as plain rows: station, ISO day, tmin, tmax to hundredths, flags as letters, hour. */
export function plainDays(file: FileReadings): unknown[] {
  return file.daily.flatMap((raw) =>
    Array.from(raw.day, (day, i) => [
      raw.station.id,
      new Date(day * 86_400_000).toISOString().slice(0, 10),
      hundredths(raw.tminC[i]!),
      hundredths(raw.tmaxC[i]!),
    ]),
  );
}

/** The readings of an hourly file as plain rows: station, ISO minute UTC (or local), temperature, wind. */
export function plainHours(file: FileReadings): unknown[] {
  return file.hourly.flatMap((raw) =>
    Array.from(raw.timeUtcH, (time, i) => [
      raw.station.id,
      new Date(Math.round(time * 60) * 60_000).toISOString().slice(0, 16),
      hundredths(raw.tempC[i]!),
      hundredths(raw.windMs[i]!),
    ]),
  );
}

function hundredths(value: number): number | null {
  return Number.isNaN(value) ? null : Math.round(value * 100) / 100 + 0;
}

/** The message with which a promise is refused; fails when it isn't an InputError. */
export async function refusal(promise: Promise<unknown>): Promise<string> {
  const outcome = await promise.then(
    () => 'was accepted',
    (error: unknown) => error,
  );
  if (outcome instanceof Error && outcome.name === 'InputError') return outcome.message;
  throw new Error(`expected an InputError, got ${String(outcome)}`);
}

/** A `.dly` line: one month of one element, values in tenths, `null` for missing, an optional flag a day. */
export function dlyLine(
  id: string,
  month: string,
  element: string,
  values: readonly (number | null)[],
  flags: Readonly<Record<number, string>> = {},
): string {
  const cells = Array.from({ length: 31 }, (_, day) => {
    const value = values[day] ?? -9999;
    return `${String(value).padStart(5)} ${flags[day] ?? ' '}C`;
  });
  return `${id}${month}${element}${cells.join('')}`;
}
