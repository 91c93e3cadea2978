import { t } from '../../analysis/language/t.ts';
import { DownloadError } from './download.ts';

/** `\0asm`, with which every WebAssembly file begins. */
const MAGIC = [0x00, 0x61, 0x73, 0x6d];

/**
 * Refuses a file that can't be the engine, such as a sign-in page sent in its place. DuckDB given such a file never answers.
 * @throws DownloadError in one sentence
 */
export async function checkWasm(file: Blob, expectedBytes: number): Promise<void> {
  const start = new Uint8Array(await file.slice(0, MAGIC.length).arrayBuffer());
  if (!MAGIC.every((byte, i) => start[i] === byte)) {
    throw new DownloadError(t`The server sent something else in place of the database engine.`);
  }
  if (file.size !== expectedBytes) {
    throw new DownloadError(t`The database engine arrived damaged: ${file.size} of ${expectedBytes} bytes.`);
  }
}
