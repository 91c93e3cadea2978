import { writeFile, type Content } from './write-file.ts';

/** A file to write for a page that can't. */
export interface WriteRequest {
  readonly folder: FileSystemDirectoryHandle;
  readonly path: string;
  readonly content: Blob;
}

/** Its bytes, or why not. */
export type WriteReply = { readonly bytes: number } | { readonly name: string; readonly message: string };

/** Safari before 26 writes files of its storage in workers only. */
function mustUseWorker(): boolean {
  return typeof document !== 'undefined' && !('createWritable' in FileSystemFileHandle.prototype);
}

/** As {@link writeFile}, by a worker where the page itself can't write. */
export async function writeAnywhere(
  folder: FileSystemDirectoryHandle,
  path: string,
  content: Content,
): Promise<number> {
  if (!mustUseWorker()) return writeFile(folder, path, content);
  const blob =
    content instanceof ReadableStream ? await new Response(content).blob() : new Blob([content as BlobPart]);
  const worker = new Worker(new URL('./write.worker.ts', import.meta.url), { type: 'module', name: 'write' });
  try {
    const reply = await new Promise<WriteReply>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<WriteReply>) => resolve(data);
      worker.onerror = () => reject(new TypeError('The worker that writes files could not be started.'));
      worker.postMessage({ folder, path, content: blob } satisfies WriteRequest);
    });
    if ('bytes' in reply) return reply.bytes;
    throw new DOMException(reply.message, reply.name);
  } finally {
    worker.terminate();
  }
}
