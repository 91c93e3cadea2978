/** Steps kept; older ones are forgotten. */
const MOST_STEPS = 200;

/**
 * What was done, so that it can be undone. Never changes itself: each step gives a new history. Steps with the same
 * `run` one after another count as one, so that ten presses of an arrow key are undone at once.
 */
export class YardHistory<T> {
  private constructor(
    readonly present: T,
    private readonly past: readonly T[],
    private readonly future: readonly T[],
    private readonly run: string | null,
  ) {}

  static startingWith<T>(present: T): YardHistory<T> {
    return new YardHistory(present, [], [], null);
  }

  get canUndo(): boolean {
    return this.past.length > 0;
  }
  get canRedo(): boolean {
    return this.future.length > 0;
  }

  /** One step on; what had been undone is gone. The same value again is no step. */
  do(next: T, run: string | null = null): YardHistory<T> {
    if (next === this.present) return this;
    const goesOn = run !== null && run === this.run;
    const past = goesOn ? this.past : [...this.past, this.present].slice(-MOST_STEPS);
    return new YardHistory(next, past, [], run);
  }

  undo(): YardHistory<T> {
    const before = this.past.at(-1);
    if (before === undefined) return this;
    return new YardHistory(before, this.past.slice(0, -1), [this.present, ...this.future], null);
  }

  redo(): YardHistory<T> {
    const [next, ...future] = this.future;
    if (next === undefined) return this;
    return new YardHistory(next, [...this.past, this.present], future, null);
  }
}
