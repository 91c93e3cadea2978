import { runBatch, type BatchHelper, type BatchRunOptions } from '../../analysis/answer/batch-run.ts';
import type { BatchPlace } from '../../analysis/answer/batch.ts';
import { t } from '../../analysis/language/t.ts';
import { told } from '../language/worker-language.ts';
import type { BatchAsked, BatchReply, BatchRequest } from './batch-messages.ts';
import type { TaskWorker } from './task-messages.ts';

/** The worker behind the client. */
export type BatchWorker = TaskWorker<BatchRequest, BatchReply>;

/** One core is left to the page; more workers than this load the pack more often than is won. */
const MOST_WORKERS = 4;
/** Fewer places than this are not worth another worker. */
const PLACES_A_WORKER = 16;

function startWorker(): BatchWorker {
  return told(new Worker(new URL('./batch.worker.ts', import.meta.url), { type: 'module', name: 'batch' }));
}

/**
 * Answers the places of a batch by workers of its own, so that the page's answers don't wait for it. The workers live as
 * long as the batch.
 * @returns whether all places were answered; not when it was stopped
 */
export async function answerBatch(
  asked: BatchAsked,
  places: readonly BatchPlace[],
  options: BatchRunOptions,
  cores = navigator.hardwareConcurrency,
  start: () => BatchWorker = startWorker,
): Promise<boolean> {
  // Two at least: while the reader waits for the batch the page itself does next to nothing.
  const most = Math.min(MOST_WORKERS, Math.max(2, cores - 1));
  const count = Math.max(1, Math.min(most, Math.ceil(places.length / PLACES_A_WORKER)));
  const workers = Array.from({ length: count }, () => start());
  try {
    return await runBatch(
      places,
      workers.map((worker) => helperOf(worker, asked)),
      options,
    );
  } finally {
    for (const worker of workers) worker.terminate();
  }
}

function helperOf(worker: BatchWorker, asked: BatchAsked): BatchHelper {
  return (places) =>
    new Promise((resolve, reject) => {
      worker.onmessage = ({ data }) =>
        'answers' in data ? resolve(data.answers) : reject(new Error(data.failure));
      worker.onerror = () =>
        reject(new Error(t`The part of the page that answers the batch stopped working.`));
      worker.postMessage({ asked, places });
    });
}
