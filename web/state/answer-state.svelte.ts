import type { DepthDuration, Ranking } from '../../analysis/answer/assessment.ts';
import {
  byStation,
  byWinter,
  NO_NIGHTS,
  NO_PERIODS,
  type NightsByWinter,
  type PeriodsByStation,
} from './keyed.ts';
import type {
  AssessPort,
  AssessQuestion,
  DepthDurationQuestion,
  StationPeriodsQuestion,
  WinterNightsQuestion,
} from './ports.ts';

export type AnswerStatus = 'idle' | 'working' | 'ready' | 'failed';

/** Name of the error a client throws when a newer question of the same kind took over; such an answer is dropped. */
const SUPERSEDED = 'Superseded';

/**
 * The answer on the page. While a new one is worked out the old one stays, marked by `status`, so that nothing jumps.
 */
export class AnswerState {
  #status = $state<AnswerStatus>('idle');
  #assessment = $state.raw<Ranking | null>(null);
  #answered = $state.raw<AssessQuestion | null>(null);
  #cold = $state.raw<readonly DepthDuration[] | null>(null);
  #periods = $state.raw<PeriodsByStation>(NO_PERIODS);
  #error = $state<string | null>(null);
  #port: AssessPort;
  #asked: AssessQuestion | null = null;
  #turn = 0;
  #coldTurn = 0;
  #coldFailed = $state(false);
  #periodsTurn = 0;
  #nights = $state.raw<NightsByWinter>(NO_NIGHTS);
  #nightsTurn = 0;

  constructor(port: AssessPort) {
    this.#port = port;
  }

  get status(): AnswerStatus {
    return this.#status;
  }
  get assessment(): Ranking | null {
    return this.#assessment;
  }
  /** The question that `assessment` answers. */
  get answered(): AssessQuestion | null {
    return this.#answered;
  }
  /** Curves of depth and duration, `null` until they have come. */
  get cold(): readonly DepthDuration[] | null {
    return this.#cold;
  }
  get coldFailed(): boolean {
    return this.#coldFailed;
  }
  /** By station id, for the map. */
  get periods(): PeriodsByStation {
    return this.#periods;
  }
  get error(): string | null {
    return this.#error;
  }
  /** The night behind each winter's value, by winter; empty while unknown. */
  get nights(): NightsByWinter {
    return this.#nights;
  }

  /** Ask for the answer; the latest question wins. */
  async ask(question: AssessQuestion): Promise<void> {
    const turn = ++this.#turn;
    this.#asked = question;
    this.#status = 'working';
    this.#error = null;
    try {
      const assessment = await this.#port.assess(question);
      if (turn !== this.#turn) return;
      this.#assessment = assessment;
      this.#answered = question;
      this.#status = 'ready';
    } catch (error) {
      if (turn !== this.#turn || (error as Error).name === SUPERSEDED) return;
      this.#error = error instanceof Error ? error.message : String(error);
      this.#status = 'failed';
    }
  }

  retry(): Promise<void> {
    return this.#asked ? this.ask(this.#asked) : Promise.resolve();
  }

  /** Ask for one type's periods at all stations. Failing leaves the map's stations without a class, and says nothing twice. */
  async askPeriods(question: StationPeriodsQuestion): Promise<void> {
    const turn = ++this.#periodsTurn;
    try {
      const periods = await this.#port.stationPeriods(question);
      if (turn === this.#periodsTurn) {
        this.#periods = byStation(periods);
      }
    } catch {
      if (turn === this.#periodsTurn) this.#periods = NO_PERIODS;
    }
  }

  /** Ask for the curves of depth and duration; while they are worked out those before stay. */
  async askDepthDuration(question: DepthDurationQuestion): Promise<void> {
    const turn = ++this.#coldTurn;
    this.#coldFailed = false;
    try {
      const cold = await this.#port.depthDuration(question);
      if (turn === this.#coldTurn) this.#cold = cold;
    } catch {
      if (turn !== this.#coldTurn) return;
      this.#cold = null;
      this.#coldFailed = true;
    }
  }

  /** Ask for the nights behind the winters. They only add dates to the chart, so failing leaves it without. */
  async askNights(question: WinterNightsQuestion): Promise<void> {
    const turn = ++this.#nightsTurn;
    try {
      const nights = await this.#port.winterNights(question);
      if (turn === this.#nightsTurn) this.#nights = byWinter(nights);
    } catch {
      if (turn === this.#nightsTurn) this.#nights = NO_NIGHTS;
    }
  }
}
