import type { DepthDuration, Ranking } from '../../analysis/answer/assessment.ts';
import { LaterAnswer, type AnswerStatus } from './later-answer.svelte.ts';
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

/**
 * The answer on the page. While a new one is worked out the old one stays, marked by `status`, so that nothing jumps.
 */
export class AnswerState {
  readonly #ranking: LaterAnswer<AssessQuestion, Ranking>;
  #cold = $state.raw<readonly DepthDuration[] | null>(null);
  #periods = $state.raw<PeriodsByStation>(NO_PERIODS);
  #port: AssessPort;
  #coldTurn = 0;
  #coldFailed = $state(false);
  #periodsTurn = 0;
  #nights = $state.raw<NightsByWinter>(NO_NIGHTS);
  #nightsTurn = 0;

  constructor(port: AssessPort) {
    this.#port = port;
    this.#ranking = new LaterAnswer((question) => port.assess(question));
  }

  get status(): AnswerStatus {
    return this.#ranking.status;
  }
  get assessment(): Ranking | null {
    return this.#ranking.answer;
  }
  /** The question that `assessment` answers. */
  get answered(): AssessQuestion | null {
    return this.#ranking.answered;
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
    return this.#ranking.error;
  }
  /** The night behind each winter's value, by winter; empty while unknown. */
  get nights(): NightsByWinter {
    return this.#nights;
  }

  /** Ask for the answer; the latest question wins. */
  ask(question: AssessQuestion): Promise<void> {
    return this.#ranking.ask(question);
  }

  retry(): Promise<void> {
    return this.#ranking.retry();
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
