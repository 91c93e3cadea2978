/** Calls back with a value once it has stayed the same for a while; a new value starts the wait again. */
export class Resting<T> {
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly ms: number,
    private readonly rested: (value: T) => void,
  ) {}

  /** The value now; `null` calls off. */
  now(value: T | null): void {
    clearTimeout(this.#timer);
    if (value !== null) this.#timer = setTimeout(() => this.rested(value), this.ms);
  }
}
