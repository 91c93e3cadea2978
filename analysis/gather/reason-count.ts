/** Counts values by the rule that took them out. */
export class ReasonCount {
  readonly counts: Record<string, number>;

  /** @param before counts to go on from */
  constructor(before: Readonly<Record<string, number>> = {}) {
    this.counts = { ...before };
  }

  add(values: readonly { readonly reason: string }[]): void {
    for (const { reason } of values) this.counts[reason] = (this.counts[reason] ?? 0) + 1;
  }
}
