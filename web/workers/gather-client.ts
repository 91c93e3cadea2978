import { t } from '../../analysis/language/t.ts';
import type { GatherProgress } from '../gather/brought.ts';
import { told } from '../language/worker-language.ts';
import type { GatherTasks } from './gather-messages.ts';
import { TaskClient, type StoppableWorker } from './task-client.ts';

function startWorker(): StoppableWorker<GatherTasks, GatherProgress> {
  return told(new Worker(new URL('./gather.worker.ts', import.meta.url), { type: 'module', name: 'gather' }));
}

/** The page's side of the worker that reads station files and makes packs of them. It keeps what it read until it is closed. */
export class GatherClient extends TaskClient<GatherTasks, GatherProgress> {
  constructor(start = startWorker) {
    super(start, t`The part of the page that reads files stopped working.`);
  }

  override close(reason: Error = new DOMException('The worker was closed.', 'AbortError')): void {
    super.close(reason);
  }
}
