import { canopyGains, depthDurationOf, rankTypes } from '../../analysis/answer/assess.ts';
import type { DepthDuration, Ranking } from '../../analysis/answer/assessment.ts';
import type { LeastCoverAnswer } from '../../analysis/answer/cover-answer.ts';
import { findSubject, type FoundSubject, type PlaceRequest } from '../../analysis/answer/find-subject.ts';
import { PlaceHistories, type WinterSource } from '../../analysis/answer/place-histories.ts';
import { FitShelf } from '../../analysis/answer/fit-book.ts';
import { limitC } from '../../analysis/answer/level-answer.ts';
import { completeValuesC } from '../../analysis/answer/winter-values.ts';
import { threeReadings, type ThreeReadings } from '../../analysis/answer/three-readings.ts';
import { countedPeriod, countHits } from '../../analysis/extremes/counted.ts';
import { headline } from '../../analysis/extremes/headline.ts';
import { t } from '../../analysis/language/t.ts';
import { nearestStations } from '../../analysis/place/nearest-stations.ts';
import type { PackStation } from '../../analysis/records/pack.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import { CITRUS_TYPES, findType, type CitrusType } from '../../analysis/tree/catalogue.ts';
import { LEVELS } from '../../analysis/tree/levels.ts';
import { gainsAt } from '../../analysis/winter/gain-spread.ts';
import { winterMinima } from '../../analysis/winter/winter-minima.ts';
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
import { coldestNights } from './coldest-nights.ts';
import { PackSurfaces } from './pack-surfaces.ts';
import { protectionOf } from './protection-of.ts';

/** A place ready for answers; its fits are kept, since a tree's age or condition moves only the threshold. */
interface Ready extends FoundSubject {
  readonly shelf: FitShelf;
}

/** @throws InputError when the catalogue has no such type */
function knownType(typeId: string): CitrusType {
  const type = findType(typeId);
  if (type) return type;
  throw new InputError(t`Type "${typeId}" is not among the ${CITRUS_TYPES.length} types known.`);
}

/** Places whose fits are kept: a pointer that wanders over the map asks about many. */
const MOST_PLACES = 100;

/** More stations than this are not classed on the map: their tiles would be too much to load. */
const MOST_STATIONS_SHOWN = 400;

/** Lets newer messages in between two stations; true when the work has been overtaken. */
export type Overtaken = () => Promise<boolean>;

/** All answers about one pack, from its winters alone. */
export class PackAnswers {
  readonly #places = new Map<string, Promise<Ready>>();
  /** Where the last place asked about lies. */
  #last: { readonly lat: number; readonly lon: number } | null = null;
  readonly #histories: PlaceHistories;
  readonly #surfaces: PackSurfaces;

  constructor(private readonly source: WinterSource) {
    this.#histories = new PlaceHistories(source);
    this.#surfaces = new PackSurfaces(source, this.#histories);
  }

  /** Every type and level at one place. */
  async assess({ place, tree, years, protection }: AssessQuestion): Promise<Ranking> {
    const { subject, shelf } = await this.#ready(place);
    const { gains, words: standing, problems: standingProblems } = await protectionOf(protection);
    this.#last = subject.place;
    const request = { types: CITRUS_TYPES, levels: LEVELS, tree, gains, years, standing, standingProblems };
    return rankTypes(subject, request, shelf);
  }

  /** Levels for every number of hours; `null` when overtaken between two fits, so that a newer answer waits for one at most. */
  async depthDuration(
    { place, protection }: DepthDurationQuestion,
    overtaken: Overtaken,
  ): Promise<readonly DepthDuration[] | null> {
    const { subject, shelf } = await this.#ready(place);
    const book = shelf.forGains(canopyGains((await protectionOf(protection)).gains));
    for (const hours of SUSTAINED_HOURS) {
      if (await overtaken()) return null;
      book.forHours(hours);
    }
    return depthDurationOf(subject, book);
  }

  /**
   * One type and level at every station by its own count alone, so that a reader sees where the surface between the
   * stations and a record disagree; `null` when overtaken. In a pack of very many stations those nearest to the place asked
   * about last.
   */
  async stationPeriods(
    { typeId, level, tree, protection }: StationPeriodsQuestion,
    overtaken: Overtaken,
  ): Promise<readonly StationPeriod[] | null> {
    const type = knownType(typeId);
    const { hours } = type.thresholds[level];
    const limit = limitC({ type, level, tree });
    const gains = gainsAt((await protectionOf(protection)).gains[level], 'centreC');
    const periods: StationPeriod[] = [];
    for (const station of this.#stationsShown()) {
      if (await overtaken()) return null;
      const winters = await this.source.winters(station);
      const valuesC = completeValuesC(winters, winterMinima(winters, hours, gains));
      const counted = countedPeriod(countHits(valuesC, limit), valuesC.length);
      periods.push({
        stationId: station.id,
        winters: valuesC.length,
        headline: headline(counted, null, valuesC.length),
      });
    }
    return periods;
  }

  #stationsShown(): readonly PackStation[] {
    const counted = this.source.stations.filter(({ winters }) => winters.complete > 0);
    if (counted.length <= MOST_STATIONS_SHOWN || !this.#last) return counted.slice(0, MOST_STATIONS_SHOWN);
    return nearestStations(counted, this.#last, MOST_STATIONS_SHOWN, Infinity).map(({ station }) => station);
  }

  /** One type and level over all cells of the land; `null` when overtaken. */
  surface(question: SurfaceQuestion, overtaken: Overtaken): Promise<Surface | null> {
    return this.#surfaces.answer(question, overtaken);
  }

  /** One type and level by three readings of the winters. */
  async readings({ place, tree, typeId, level, protection }: ReadingsQuestion): Promise<ThreeReadings> {
    const type = knownType(typeId);
    const { subject, shelf } = await this.#ready(place);
    const { hours } = type.thresholds[level];
    const gains = gainsAt((await protectionOf(protection)).gains[level], 'centreC');
    return threeReadings(subject, shelf.forGains(gains), { hours, limitC: limitC({ type, level, tree }) });
  }

  /** Several places one after another; `null` when overtaken between two. A place without an answer says why. */
  async comparison(
    { packUrl, places, tree, years, hours, level, protection }: ComparisonQuestion,
    overtaken: Overtaken,
  ): Promise<readonly ComparedPlace[] | null> {
    const compared: ComparedPlace[] = [];
    for (const place of places) {
      if (await overtaken()) return null;
      try {
        const ranking = await this.assess({ packUrl, place, tree, years, protection });
        const nights = await this.winterNights({ packUrl, place, hours, level, protection });
        compared.push({ problem: null, ranking, coastKm: await this.#coastKm(place), nights });
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        compared.push({ problem: error.message });
      }
    }
    return compared;
  }

  /** A type and level on a bare spot and under several covers; `null` when overtaken between two. */
  async coverPeriods(question: CoverPeriodsQuestion, overtaken: Overtaken): Promise<CoverPeriods | null> {
    const type = knownType(question.typeId);
    const { coverPeriods } = await import('./cover-answers.ts');
    return coverPeriods(await this.#ready(question.place), type, question, overtaken);
  }

  /** The least cover that makes a loss as rare as wished. */
  async leastCover(question: LeastCoverQuestion): Promise<LeastCoverAnswer> {
    const type = knownType(question.typeId);
    const { leastCoverHere } = await import('./cover-answers.ts');
    return leastCoverHere(await this.#ready(question.place), type, question);
  }

  async #coastKm(place: PlaceRequest): Promise<number | null> {
    if (place.by === 'station')
      return this.source.stations.find(({ id }) => id === place.id)?.coast_km ?? null;
    const model = await this.#histories.model(place);
    return model && (await this.#histories.site(model, place)).coastKm;
  }

  /** Where the nights of a place come from: what the database is then asked for. */
  async nightsSource({ place }: NightsQuestion): Promise<NightsSource> {
    const { stationId, nightPlan: plan } = await this.#ready(place);
    if (plan) return { plan };
    if (stationId === null) throw new Error('A place has the nights of a station or a plan for them.');
    return { stationId };
  }

  async winterNights({
    place,
    hours,
    level,
    protection,
  }: WinterNightsQuestion): Promise<readonly ColdestNight[]> {
    const gains = gainsAt((await protectionOf(protection)).gains[level], 'centreC');
    return coldestNights((await this.#ready(place)).subject.winters, hours, gains);
  }

  #ready(place: PlaceRequest): Promise<Ready> {
    const key = JSON.stringify(place);
    let ready = this.#places.get(key);
    this.#places.delete(key);
    if (!ready) {
      ready = findSubject(this.source, place, this.#histories).then((found) => ({
        ...found,
        shelf: new FitShelf(found.subject),
      }));
      ready.catch(() => this.#places.delete(key));
    }
    // Asked about last, forgotten last.
    this.#places.set(key, ready);
    if (this.#places.size > MOST_PLACES) this.#places.delete(this.#places.keys().next().value!);
    return ready;
  }
}
