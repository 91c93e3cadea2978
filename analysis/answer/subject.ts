import type { Evidence } from '../place/place-history.ts';
import type { InterpolationError } from '../extremes/interpolation-error.ts';
import type { WinterTable } from '../records/winters.ts';
import type { AssessedPlace } from './assessment.ts';

/** The place an answer is about: its winters, and those of neighbouring stations to pool the shape of the fit with. */
export interface Subject {
  readonly place: AssessedPlace;
  readonly winters: WinterTable;
  readonly neighbours: readonly WinterTable[];
  /** By index of SUSTAINED_HOURS, how far the winters may be off where there is no station; left out at a station. */
  readonly interpolation?: readonly InterpolationError[] | null;
  /** Stations the winters come from, heaviest first; the station itself alone at a station. */
  readonly evidence: readonly Evidence[];
  /** Sentences about the place that must stand beside the answer. */
  readonly notes: readonly string[];
}
