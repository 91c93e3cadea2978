import { headline, type Headline } from '../extremes/headline.ts';
import { InputError } from '../records/input-error.ts';
import type { CoverId } from '../cover/cover-ids.ts';
import type { CitrusType } from '../tree/catalogue.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import type { TreeState } from '../tree/penalties.ts';
import { gainsAt } from '../winter/gain-spread.ts';
import type { Gains } from '../winter/winter-minima.ts';
import {
  BATCH_ADVICE,
  BATCH_BASES,
  BATCH_DRAWS,
  BATCH_LEVELS,
  type BatchAnswer,
  type BatchPlace,
  type BatchRefusal,
} from './batch.ts';
import { PLAN_COVERS, plansFor } from './advice-plans.ts';
import { adviseBatch, type BatchAdvising } from './batch-advice.ts';
import { findSubject } from './find-subject.ts';
import { FitShelf } from './fit-book.ts';
import { countAt, fittedAt, limitC } from './level-answer.ts';
import { PlaceHistories, type WinterSource } from './place-histories.ts';
import { gainsOnSpot, type Protection } from './protection.ts';
import type { Subject } from './subject.ts';

/** What is asked about every place. */
export interface BatchQuestion extends BatchAdvising {
  /** Of spot and cover together; a batch takes them at their middle. */
  readonly gains: LevelGainSpreads;
  /** {@link BATCH_DRAWS} unless told. */
  readonly draws?: number;
}

/**
 * The question for the tree, the spot and the covers chosen.
 * @param covers ids and conditions of the covers chosen
 */
export function batchQuestion(
  types: readonly CitrusType[],
  tree: TreeState,
  { spot, gains }: Pick<Protection, 'spot' | 'gains'>,
  covers: readonly CoverId[],
): BatchQuestion {
  const [strongest, ...weaker] = plansFor(covers).toReversed();
  const own = weaker.filter(({ ids }) => ids.length > 0 && !PLAN_COVERS.includes(ids));
  return {
    types,
    tree,
    gains,
    bare: gainsOnSpot(spot, []),
    plans: [strongest, ...own].map(({ ids, nightWork }) => ({ gains: gainsOnSpot(spot, ids), nightWork })),
  };
}

/** One figure to work out: many types share theirs. */
interface Asked {
  readonly gains: Gains;
  readonly hours: number;
  readonly limitC: number;
}

/** Where only the curve is asked, nothing reads the draws. */
const PLAIN_DRAWS = 2;
/** Areas whose models are kept: beyond that a batch over a continent would hold them all. */
const MOST_AREAS = 60;

/** Answers places one after another. What is told of a place doesn't depend on those before. */
export class BatchAnswers {
  #histories: PlaceHistories;
  readonly #areas = new Set<string>();
  readonly #asked: readonly Asked[];
  /** For each type and level in turn the index of its figure. */
  readonly #figureOf: readonly number[];

  constructor(
    private readonly source: WinterSource,
    private readonly question: BatchQuestion,
  ) {
    this.#histories = new PlaceHistories(source);
    const { asked, figureOf } = askedOnce(question);
    this.#asked = asked;
    this.#figureOf = figureOf;
  }

  /** A place; one that nothing can be told about says why. */
  async answer({ lat, lon, elevationM }: BatchPlace): Promise<BatchAnswer | BatchRefusal> {
    this.#forgetFarAreas(lat, lon);
    try {
      const request = { by: 'point', label: `${lat}, ${lon}`, lat, lon, elevationM } as const;
      const { subject } = await findSubject(this.source, request, this.#histories);
      return this.#tell(subject);
    } catch (error) {
      if (error instanceof InputError) return { problem: error.message };
      throw error;
    }
  }

  #tell(subject: Subject): BatchAnswer {
    const { question } = this;
    const ranged = new FitShelf(subject, question.draws ?? BATCH_DRAWS);
    const shelves = { ranged, plain: new FitShelf(subject, PLAIN_DRAWS) };
    const told = this.#asked.map(({ gains, hours, limitC: limit }): Headline => {
      const book = ranged.forGains(gains).forHours(hours);
      return headline(countAt(book, limit), fittedAt(book, limit), book.valuesC.length);
    });
    const figures = this.#figureOf.map((at) => told[at]);
    const { winter, complete } = subject.winters;
    const used = [...winter].filter((_, w) => complete[w] === 1);
    const [heaviest] = subject.evidence;
    return {
      problem: null,
      basis: subject.place.basis,
      station: this.source.stations.find(({ id }) => id === heaviest.id)?.name ?? heaviest.id,
      stationKm: heaviest.distanceKm,
      elevationM: subject.place.elevation_m ?? NaN,
      errorC: subject.place.error_c ?? 0,
      winters: used.length,
      first: used[0] ?? 0,
      last: used.at(-1) ?? 0,
      periods: Float64Array.from(
        figures.flatMap(({ period, low, high }) => [period ?? NaN, low, high ?? NaN]),
      ),
      bases: Uint8Array.from(figures, ({ basis }) => BATCH_BASES.indexOf(basis)),
      advice: Uint8Array.from(adviseBatch(question, used.length, shelves), (told) =>
        BATCH_ADVICE.indexOf(told),
      ),
    };
  }

  #forgetFarAreas(lat: number, lon: number): void {
    this.#areas.add(`${Math.floor(lat)} ${Math.floor(lon)}`);
    if (this.#areas.size <= MOST_AREAS) return;
    this.#areas.clear();
    this.#histories = new PlaceHistories(this.source);
  }
}

function askedOnce({ types, tree, gains }: BatchQuestion): { asked: Asked[]; figureOf: number[] } {
  const asked: Asked[] = [];
  const known = new Map<string, number>();
  const figureOf = types.flatMap((type) =>
    BATCH_LEVELS.map((level) => {
      const { hours } = type.thresholds[level];
      const limit = limitC({ type, level, tree });
      const own = gainsAt(gains[level], 'centreC');
      const key = `${own.calmC} ${own.windyC} ${hours} ${limit}`;
      let at = known.get(key);
      if (at === undefined) {
        at = asked.length;
        known.set(key, at);
        asked.push({ gains: own, hours, limitC: limit });
      }
      return at;
    }),
  );
  return { asked, figureOf };
}
