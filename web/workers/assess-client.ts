import type { DepthDuration, Ranking } from '../../analysis/answer/assessment.ts';
import type { LeastCoverAnswer } from '../../analysis/answer/cover-answer.ts';
import type { ThreeReadings } from '../../analysis/answer/three-readings.ts';
import { t } from '../../analysis/language/t.ts';
import type {
  AssessPort,
  AssessQuestion,
  ColdestNight,
  ComparedPlace,
  ComparisonQuestion,
  CoverPeriods,
  CoverPeriodsQuestion,
  DepthDurationQuestion,
  LaterPort,
  LeastCoverQuestion,
  NightsQuestion,
  NightsSource,
  ReadingsQuestion,
  StationPeriod,
  StationPeriodsQuestion,
  Surface,
  SurfacePort,
  SurfaceQuestion,
  WinterNightsQuestion,
} from '../state/ports.ts';
import { Superseded, type Reply, type Request, type TaskKind, type Tasks } from './messages.ts';
import type { TaskWorker } from './task-messages.ts';
import { told } from '../language/worker-language.ts';

/** The worker behind the client. */
export type WorkerLike = TaskWorker<Request, Reply>;

interface Waiting {
  readonly kind: TaskKind;
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

function startWorker(): WorkerLike {
  return told(new Worker(new URL('./assess.worker.ts', import.meta.url), { type: 'module', name: 'assess' }));
}

/**
 * The page's side of the worker that answers from winters. Starts it at the first question. A newer question of a kind
 * rejects the older one with {@link Superseded}; a worker that breaks fails what is waiting and is started anew next time.
 */
export class AssessClient implements AssessPort, LaterPort, SurfacePort {
  #worker: WorkerLike | null = null;
  #nextId = 1;
  readonly #waiting = new Map<number, Waiting>();

  constructor(private readonly start: () => WorkerLike = startWorker) {}

  assess(question: AssessQuestion): Promise<Ranking> {
    return this.#ask('assess', question);
  }

  depthDuration(question: DepthDurationQuestion): Promise<readonly DepthDuration[]> {
    return this.#ask('depthDuration', question);
  }

  stationPeriods(question: StationPeriodsQuestion): Promise<readonly StationPeriod[]> {
    return this.#ask('stationPeriods', question);
  }

  surface(question: SurfaceQuestion): Promise<Surface> {
    return this.#ask('surface', question);
  }

  readings(question: ReadingsQuestion): Promise<ThreeReadings> {
    return this.#ask('readings', question);
  }

  comparison(question: ComparisonQuestion): Promise<readonly ComparedPlace[]> {
    return this.#ask('comparison', question);
  }

  coverPeriods(question: CoverPeriodsQuestion): Promise<CoverPeriods> {
    return this.#ask('coverPeriods', question);
  }

  leastCover(question: LeastCoverQuestion): Promise<LeastCoverAnswer> {
    return this.#ask('leastCover', question);
  }

  nightsSource(question: NightsQuestion): Promise<NightsSource> {
    return this.#ask('nightsSource', question);
  }

  /** The night behind each winter's value, by winter. */
  winterNights(question: WinterNightsQuestion): Promise<readonly ColdestNight[]> {
    return this.#ask('winterNights', question);
  }

  close(): void {
    this.#fail(new Superseded());
  }

  #ask<K extends TaskKind>(kind: K, question: Tasks[K]['question']): Promise<Tasks[K]['answer']> {
    for (const [id, older] of this.#waiting) {
      if (older.kind !== kind) continue;
      this.#waiting.delete(id);
      older.reject(new Superseded());
    }
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { kind, resolve, reject });
      this.#running().postMessage({ id, kind, question } as Request);
    });
  }

  #running(): WorkerLike {
    if (!this.#worker) {
      this.#worker = this.start();
      this.#worker.onmessage = ({ data }) => this.#receive(data);
      this.#worker.onerror = () =>
        this.#fail(new Error(t`The part of the page that computes answers stopped working.`));
    }
    return this.#worker;
  }

  #receive(reply: Reply): void {
    const waiting = this.#waiting.get(reply.id);
    if (!waiting) return;
    this.#waiting.delete(reply.id);
    if (reply.outcome === 'done') waiting.resolve(reply.answer as never);
    else waiting.reject(reply.outcome === 'superseded' ? new Superseded() : new Error(reply.message));
  }

  #fail(error: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    for (const { reject } of this.#waiting.values()) reject(error);
    this.#waiting.clear();
  }
}
