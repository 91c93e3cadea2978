import { open } from 'node:fs/promises';

/** The first bytes of a file, fewer where it is shorter. */
export async function firstBytes(file: string, count: number): Promise<Uint8Array> {
  const handle = await open(file);
  try {
    const buffer = new Uint8Array(count);
    const { bytesRead } = await handle.read(buffer, 0, count, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

/** Whether a file is gzipped, by its first bytes. */
export async function isGzipped(file: string): Promise<boolean> {
  const [first, second] = await firstBytes(file, 2);
  return first === 0x1f && second === 0x8b;
}
