/** Work that can be told of and stopped between two steps: each step gives how much is done, 0-1, the last what came of it. */
export type Steps<Answer> = Generator<number, Answer>;

/** All steps in one go. */
export function lastOf<Answer>(steps: Steps<Answer>): Answer {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
