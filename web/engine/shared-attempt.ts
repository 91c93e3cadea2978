/**
 * One attempt shared by all who ask while it runs or after it succeeded. A failed attempt is forgotten, so that the next
 * call starts afresh and nothing stays half-open.
 */
export class SharedAttempt<T> {
  #attempt: Promise<T> | null = null;

  constructor(private readonly start: () => Promise<T>) {}

  get(): Promise<T> {
    if (!this.#attempt) {
      const attempt = this.start();
      this.#attempt = attempt;
      attempt.catch(() => {
        if (this.#attempt === attempt) this.#attempt = null;
      });
    }
    return this.#attempt;
  }

  /** Forget what was opened and hand it over for closing; `null` when there is nothing. */
  take(): Promise<T> | null {
    const attempt = this.#attempt;
    this.#attempt = null;
    return attempt;
  }
}
