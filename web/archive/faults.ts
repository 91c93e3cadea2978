import { InputError } from '../../analysis/records/input-error.ts';

/** A fault that another try may mend. `waitMs` is the wait that the server itself asked for. */
export class PassingFault extends Error {
  readonly waitMs: number | null;
  constructor(message: string, waitMs: number | null = null) {
    super(message);
    this.waitMs = waitMs;
  }
}

/**
 * No answer came at all: the network is down, there is no such host, or the server doesn't let pages of other sites read
 * it. A browser tells a page no more than that.
 */
export class NoAnswer extends PassingFault {}

/** The archive couldn't be reached any more: what else was asked for won't come either. */
export class Unreached extends InputError {}
