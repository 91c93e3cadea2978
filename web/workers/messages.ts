import type { DepthDuration, Ranking } from '../../analysis/answer/assessment.ts';
import type { LeastCoverAnswer } from '../../analysis/answer/cover-answer.ts';
import type { ThreeReadings } from '../../analysis/answer/three-readings.ts';
import type {
  AssessQuestion,
  ColdestNight,
  ComparedPlace,
  ComparisonQuestion,
  CoverPeriods,
  CoverPeriodsQuestion,
  DepthDurationQuestion,
  LeastCoverQuestion,
  NightsQuestion,
  NightsSource,
  ReadingsQuestion,
  StationPeriod,
  StationPeriodsQuestion,
  Surface,
  SurfaceQuestion,
  WinterNightsQuestion,
} from '../state/ports.ts';
import type { AnswerOf, RequestOf } from './task-messages.ts';

/** What can be asked of the worker, with its question and its answer. */
export interface Tasks {
  assess: { question: AssessQuestion; answer: Ranking };
  depthDuration: { question: DepthDurationQuestion; answer: readonly DepthDuration[] };
  stationPeriods: { question: StationPeriodsQuestion; answer: readonly StationPeriod[] };
  surface: { question: SurfaceQuestion; answer: Surface };
  readings: { question: ReadingsQuestion; answer: ThreeReadings };
  comparison: { question: ComparisonQuestion; answer: readonly ComparedPlace[] };
  coverPeriods: { question: CoverPeriodsQuestion; answer: CoverPeriods };
  leastCover: { question: LeastCoverQuestion; answer: LeastCoverAnswer };
  nightsSource: { question: NightsQuestion; answer: NightsSource };
  winterNights: { question: WinterNightsQuestion; answer: readonly ColdestNight[] };
}
export type TaskKind = keyof Tasks;

/** To the worker. */
export type Request = RequestOf<Tasks>;

/** From the worker. */
export type Reply =
  | { readonly id: number; readonly outcome: 'done'; readonly answer: AnswerOf<Tasks> }
  | { readonly id: number; readonly outcome: 'superseded' }
  | { readonly id: number; readonly outcome: 'failed'; readonly message: string };

/** A question that a newer one of its kind has overtaken; whoever asked drops it silently. */
export class Superseded extends Error {
  override readonly name = 'Superseded';
  constructor() {
    super('A newer question of this kind was asked.');
  }
}
