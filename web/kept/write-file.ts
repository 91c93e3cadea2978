/** What a file can be made of. */
export type Content = Blob | Uint8Array | string | ReadableStream<Uint8Array>;

/** The part of a file's handle that workers have beside `createWritable`, and older Safari has alone. */
interface SyncFileHandle extends FileSystemFileHandle {
  createSyncAccessHandle?(): Promise<{
    write(bytes: Uint8Array, at: { at: number }): number;
    truncate(size: number): void;
    flush(): void;
    close(): void;
  }>;
}

/**
 * Writes a file below a folder, whole; makes the folders on its path. Results in its bytes.
 * @throws DOMException QuotaExceededError where the browser has no room
 * @throws TypeError where this page or worker can't write
 */
export async function writeFile(
  folder: FileSystemDirectoryHandle,
  path: string,
  content: Content,
): Promise<number> {
  const names = path.split('/');
  if (names.some((name) => name === '' || name === '.' || name === '..'))
    throw new TypeError(`“${path}” is no path of a file.`);
  let inside = folder;
  for (const name of names.slice(0, -1)) inside = await inside.getDirectoryHandle(name, { create: true });
  const file: SyncFileHandle = await inside.getFileHandle(names[names.length - 1], { create: true });
  const bytes = content instanceof ReadableStream ? content : new Blob([content as BlobPart]).stream();
  if (typeof file.createWritable === 'function') return writeStream(await file.createWritable(), bytes);
  if (typeof file.createSyncAccessHandle === 'function') return writeAtOnce(file, bytes);
  throw new TypeError('This browser writes files of its own storage in workers only.');
}

/** Counts what is written; an error leaves the file as it was. */
async function writeStream(
  file: FileSystemWritableFileStream,
  bytes: ReadableStream<Uint8Array>,
): Promise<number> {
  let count = 0;
  const writer = file.getWriter();
  try {
    for await (const chunk of chunksOf(bytes)) {
      count += chunk.length;
      await writer.write(chunk as Uint8Array<ArrayBuffer>);
    }
    await writer.close();
    return count;
  } catch (error) {
    await writer.abort(error).catch(() => {});
    throw error;
  }
}

async function writeAtOnce(file: SyncFileHandle, bytes: ReadableStream<Uint8Array>): Promise<number> {
  const handle = await file.createSyncAccessHandle!();
  let count = 0;
  try {
    handle.truncate(0);
    for await (const chunk of chunksOf(bytes)) {
      const written = handle.write(chunk, { at: count });
      if (written < chunk.length) throw new DOMException('No room for the file.', 'QuotaExceededError');
      count += written;
    }
    handle.flush();
    return count;
  } finally {
    handle.close();
  }
}

/** Streams can't be gone through by `for await` in every browser. */
async function* chunksOf(bytes: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = bytes.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    await reader.cancel().catch(() => {});
  }
}
