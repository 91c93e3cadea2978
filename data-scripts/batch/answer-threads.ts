import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';

import { runBatch, type BatchHelper, type BatchRunOptions } from '../../analysis/answer/batch-run.ts';
import type { BatchPlace } from '../../analysis/answer/batch.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { ThreadQuestion, ThreadReply } from './batch-thread.ts';

/** Beyond so many threads reading the pack weighs more than is won. */
const MOST_THREADS = 8;
/** Fewer places than this are not worth another thread. */
const PLACES_A_THREAD = 16;

/**
 * Answers places by threads that run this very bundle again (see `isBatchThread`).
 * @param threads how many; `null`: one a core, as far as there are places enough
 */
export async function answerByThreads(
  question: ThreadQuestion,
  places: readonly BatchPlace[],
  threads: number | null,
  options: BatchRunOptions,
): Promise<void> {
  const usual = Math.min(MOST_THREADS, availableParallelism(), Math.ceil(places.length / PLACES_A_THREAD));
  const workers = Array.from(
    { length: Math.max(1, threads ?? usual) },
    () => new Worker(new URL(import.meta.url), { workerData: question }),
  );
  try {
    await runBatch(places, workers.map(helperOf), options);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

function helperOf(worker: Worker): BatchHelper {
  return (places) =>
    new Promise((resolve, reject) => {
      worker.removeAllListeners();
      worker.once('message', (reply: ThreadReply) =>
        'answers' in reply ? resolve(reply.answers) : reject(new InputError(reply.failure)),
      );
      worker.once('error', reject);
      worker.once('exit', () => reject(new Error('a thread of the batch ended before its answers')));
      worker.postMessage(places);
    });
}
