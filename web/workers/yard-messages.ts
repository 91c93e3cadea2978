import type { BestSpot } from '../../analysis/spot/best-spots.ts';
import type { OffsetField } from '../../analysis/spot/offset-field.ts';
import type { Yard } from '../../analysis/spot/yard.ts';
import type { OutcomeOf, RequestOf } from './task-messages.ts';

/** A yard's offsets on a grid. */
export interface FieldQuestion {
  readonly yard: Yard;
  /** Latitude, degrees; its sign says where the sun stands. */
  readonly latDeg: number;
  readonly stepM: number;
}

/** The yard's best spots for a tree that will be so wide, m. */
export interface BestQuestion {
  readonly yard: Yard;
  readonly latDeg: number;
  readonly grownWidthM: number;
}

export interface YardTasks {
  field: { question: FieldQuestion; answer: OffsetField };
  best: { question: BestQuestion; answer: readonly BestSpot[] };
}
export type YardTaskKind = keyof YardTasks;

export type YardRequest = RequestOf<YardTasks>;

export type YardReply = OutcomeOf<YardTasks>;
