/** What can be asked of a worker, by kind, each with its question and its answer. */
export type TaskList<Tasks> = {
  readonly [K in keyof Tasks]: { readonly question: unknown; readonly answer: unknown };
};

/** To a worker: a question of one kind. */
export type RequestOf<Tasks extends TaskList<Tasks>> = {
  [K in keyof Tasks]: { readonly id: number; readonly kind: K; readonly question: Tasks[K]['question'] };
}[keyof Tasks];

/** To a worker: that nobody waits for an answer any more. */
export interface Drop {
  readonly kind: 'drop';
  readonly id: number;
}

/** Any answer a worker gives. */
export type AnswerOf<Tasks extends TaskList<Tasks>> = Tasks[keyof Tasks]['answer'];

/** From a worker: what came of a question. `plain`: the failure is a sentence about what was brought, not a fault. */
export type OutcomeOf<Tasks extends TaskList<Tasks>> =
  | { readonly id: number; readonly answer: AnswerOf<Tasks> }
  | { readonly id: number; readonly failure: string; readonly plain?: boolean };

/** From a worker that can be stopped: how far it is, and the outcome; nothing comes of a question that was dropped. */
export type ReplyOf<Tasks extends TaskList<Tasks>, Progress> =
  { readonly id: number; readonly progress: Progress } | OutcomeOf<Tasks>;

/** The part of a `Worker` that the page's side of one needs. */
export interface TaskWorker<Request, Reply> {
  postMessage(message: Request): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Reply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}
