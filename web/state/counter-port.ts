import type { CustomerAnswers } from '../../analysis/answer/advice-customer.ts';
import type { AskedOfCustomer, RowAdvice } from '../../analysis/answer/advice-here.ts';
import type { AdviceNights } from '../../analysis/answer/advice-nights.ts';
import type { AssessedPlace, Ranking } from '../../analysis/answer/assessment.ts';
import type { PlaceRequest } from '../../analysis/answer/find-subject.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';
import type { LifeQuestion, Protected } from './ports.ts';

/** Part of every question of the counter: types at a place, for a buyer who answered some questions. */
export interface CounterAsk extends Protected {
  readonly packUrl: string;
  readonly place: PlaceRequest;
  readonly tree: TreeState;
  /** `key` tells rows of a type apart; without an age of its own a row has the page's. */
  readonly rows: readonly {
    readonly key: string;
    readonly typeId: string;
    readonly ageYears: number | null;
  }[];
  readonly answers: CustomerAnswers;
  /** As `CounterPort.adviceNights` gave them; `null`: not counted. */
  readonly nights: CounterNights | null;
}

/** Nights to cover and to bring a pot in, on the page's spot and at the wall that buyers are asked about. */
export type CounterNights = Readonly<Record<'page' | 'wall', AdviceNights>>;

/** Every row's class, and how good the record behind it is. */
export interface CounterAnswer {
  readonly rows: readonly RowAdvice[];
  readonly place: AssessedPlace;
  readonly winters: Pick<Ranking['winters'], 'used' | 'first' | 'last'>;
  readonly evidence: Ranking['evidence'];
  readonly notes: readonly string[];
  /** Plain sentences about what of spot and cover was left out. */
  readonly problems: readonly string[];
}

/** What a counter asks, in the worker that goes through nights; a newer question of a kind rejects the older one. */
export interface CounterPort {
  advice(question: CounterAsk): Promise<CounterAnswer>;
  /** The questions to the buyer. */
  adviceQuestions(question: CounterAsk): Promise<readonly AskedOfCustomer[]>;
  /** The tree's age and load don't count: nights of all of them are told. */
  adviceNights(question: LifeQuestion): Promise<CounterNights>;
}
