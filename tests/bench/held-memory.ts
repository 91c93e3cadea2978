import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

setFlagsFromString('--expose_gc');
const collect = runInNewContext('gc') as () => void;

/** What the program holds when all garbage is gone, MB: objects and the bytes of arrays. */
export async function heldMegabytes(): Promise<number> {
  // Buffers of answers over HTTP are let go only some turns after.
  for (let turn = 0; turn < 3; turn++) {
    collect();
    await new Promise((next) => setTimeout(next, 20));
  }
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return (heapUsed + arrayBuffers) / 1e6;
}
