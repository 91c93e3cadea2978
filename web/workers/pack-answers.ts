import { depthDurationOf, rankTypes } from '../../analysis/answer/assess.ts';
import type { DepthDuration, Ranking } from '../../analysis/answer/assessment.ts';
import { findSubject, type FoundSubject, type PlaceRequest } from '../../analysis/answer/find-subject.ts';
import { PlaceHistories, type WinterSource } from '../../analysis/answer/place-histories.ts';
import { FitBook } from '../../analysis/answer/fit-book.ts';
import { answerLevel } from '../../analysis/answer/level-answer.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import { CITRUS_TYPES, findType } from '../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../analysis/tree/levels.ts';
import { NO_GAINS } from '../../analysis/winter/winter-minima.ts';
import type {
  AssessQuestion,
  ColdestNight,
  DepthDurationQuestion,
  StationPeriod,
  StationPeriodsQuestion,
  Surface,
  SurfaceQuestion,
  WinterNightsQuestion,
} from '../state/ports.ts';
import { coldestNights } from './coldest-nights.ts';
import { PackSurfaces } from './pack-surfaces.ts';

/** A place ready for answers; its fits are kept, since a tree's age or condition moves only the threshold. */
interface Ready extends FoundSubject {
  readonly book: FitBook;
}

/** Lets newer messages in between two stations; true when the work has been overtaken. */
export type Overtaken = () => Promise<boolean>;

/** All answers about one pack, from its winters alone. */
export class PackAnswers {
  readonly #places = new Map<string, Promise<Ready>>();
  readonly #histories: PlaceHistories;
  readonly #surfaces: PackSurfaces;

  constructor(private readonly source: WinterSource) {
    this.#histories = new PlaceHistories(source);
    this.#surfaces = new PackSurfaces(source, this.#histories);
  }

  /** Every type and level at one place. */
  async assess({ place, tree, years }: AssessQuestion): Promise<Ranking> {
    const { subject, book } = await this.#ready(place);
    return rankTypes(subject, { types: CITRUS_TYPES, levels: LEVELS, tree, gains: NO_GAINS, years }, book);
  }

  /** Levels for every number of hours; `null` when overtaken between two fits, so that a newer answer waits for one at most. */
  async depthDuration(
    { place }: DepthDurationQuestion,
    overtaken: Overtaken,
  ): Promise<readonly DepthDuration[] | null> {
    const { subject, book } = await this.#ready(place);
    for (const hours of SUSTAINED_HOURS) {
      if (await overtaken()) return null;
      book.forHours(hours);
    }
    return depthDurationOf(subject, book);
  }

  /** One type and level at every station; `null` when overtaken. */
  async stationPeriods(
    { typeId, level, tree }: StationPeriodsQuestion,
    overtaken: Overtaken,
  ): Promise<readonly StationPeriod[] | null> {
    const type = findType(typeId);
    if (!type) throw new InputError(`Type "${typeId}" is not among the ${CITRUS_TYPES.length} types known.`);
    const periods: StationPeriod[] = [];
    for (const { id, winters } of this.source.stations) {
      if (winters.complete === 0) continue;
      if (await overtaken()) return null;
      const { subject, book } = await this.#ready({ by: 'station', id });
      const question = { type, level, tree, gains: NO_GAINS, years: 1 };
      const noLong = new Int16Array(subject.winters.winter.length).fill(MISSING_HUNDREDTHS);
      const { counted, headline } = answerLevel(question, subject.winters, book, noLong, () => null);
      periods.push({ stationId: id, winters: counted.winters, headline });
    }
    return periods;
  }

  /** One type and level over all cells of the land; `null` when overtaken. */
  surface(question: SurfaceQuestion, overtaken: Overtaken): Promise<Surface | null> {
    return this.#surfaces.answer(question, overtaken);
  }

  async winterNights({ place, hours }: WinterNightsQuestion): Promise<readonly ColdestNight[]> {
    return coldestNights((await this.#ready(place)).subject.winters, hours);
  }

  #ready(place: PlaceRequest): Promise<Ready> {
    const key = JSON.stringify(place);
    let ready = this.#places.get(key);
    if (!ready) {
      ready = findSubject(this.source, place, this.#histories).then((found) => ({
        ...found,
        book: new FitBook(found.subject, NO_GAINS),
      }));
      ready.catch(() => this.#places.delete(key));
      this.#places.set(key, ready);
    }
    return ready;
  }
}
