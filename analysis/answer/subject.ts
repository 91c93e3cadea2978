import type { WinterTable } from '../records/winters.ts';
import type { AssessedPlace } from './assessment.ts';

/** The place an answer is about: its winters, and those of neighbouring stations to pool the shape of the fit with. */
export interface Subject {
  readonly place: AssessedPlace;
  readonly winters: WinterTable;
  readonly neighbours: readonly WinterTable[];
  /** Sentences about the place that must stand beside the answer. */
  readonly notes: readonly string[];
}
