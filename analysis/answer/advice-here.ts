import type { Steps } from '../math/steps.ts';
import type { CoverId } from '../cover/cover-ids.ts';
import type { CitrusType, Use } from '../tree/catalogue.ts';
import type { TreeState } from '../tree/penalties.ts';
import { adviseType, type AdviceQuestion, type TypeAdvice } from './advice.ts';
import {
  CUSTOMER_ANSWERS,
  sceneOf,
  unknownsLeft,
  type CustomerAnswers,
  type Scene,
  type Unknown,
} from './advice-customer.ts';
import { lossFigures, shortEnds, type AdviceShelves, type LossFigures } from './advice-figures.ts';
import { nightsIndex, type AdviceNights, type NightsAWinter } from './advice-nights.ts';
import { plansFor, POT_COVER, type Plan } from './advice-plans.ts';
import { FitShelf } from './fit-book.ts';
import { gainsOnSpot } from './protection.ts';
import type { StandingSpot } from './standing-spot.ts';
import type { Subject } from './subject.ts';

/** A type to be told of; in a nursery's stock also of what age. */
export interface AdvisedRow {
  /** Tells rows of the same type apart. */
  readonly key: string;
  readonly type: CitrusType;
  /** Years since planting as it is sold; `null`: as the page has it. */
  readonly ageYears: number | null;
}

/** What a counter is asked, at one place. */
export interface CounterQuestion {
  readonly rows: readonly AdvisedRow[];
  /** The page's tree and covers. */
  readonly tree: TreeState;
  readonly pageCovers: readonly CoverId[];
  /** The page's spot has something to it, so that no other is asked about. */
  readonly hasSpot: boolean;
  readonly answers: CustomerAnswers;
  /** Nights counted on the page's spot and at the wall; `null`: not yet. */
  readonly nights: Readonly<Record<Scene['spot'], AdviceNights | null>>;
}

/** One type's class and the figures that put it there. */
export interface RowAdvice extends Omit<TypeAdvice, 'plan'> {
  readonly key: string;
  readonly typeId: string;
  readonly name: string;
  readonly use: Use;
  readonly ageYears: number;
  readonly bare: LossFigures;
  /** Under the plan that does, else under the strongest there is for this buyer; `null` where none may be. */
  readonly covered: { readonly plan: Plan; readonly does: boolean; readonly figures: LossFigures } | null;
  readonly coverNights: NightsAWinter | null;
  readonly potNights: NightsAWinter | null;
  /** In a pot that may stay out all winter, by the rule for the ground, where nobody is there to bring it in. */
  readonly staysOut: boolean;
  /** In a pot brought into an unheated garage; told only of a pot that is brought in. */
  readonly inGarage: LossFigures | null;
}

/** A question to the buyer, and what each answer would change. */
export interface AskedOfCustomer {
  readonly unknown: Unknown;
  readonly options: readonly {
    readonly value: string;
    /** Taken for granted now. */
    readonly assumed: boolean;
    readonly moved: readonly Moved[];
  }[];
}

/** A type that changes its class. */
export interface Moved {
  readonly key: string;
  readonly typeId: string;
  readonly from: TypeAdvice['advice'];
  readonly to: TypeAdvice['advice'];
}

/** Questions put to a buyer at once. */
const QUESTIONS_ASKED = 2;
/** Only the curve itself is asked of these fits. */
const PLAIN_DRAWS = 20;

/** Advice at one place; its fits are kept, so that an answer of the buyer costs little. */
export class AdviceHere {
  readonly #shelves: Readonly<Record<Scene['spot'], AdviceShelves>>;
  readonly #winters: number;

  /** @param spots the page's, and the wall that is asked about */
  constructor(
    readonly subject: Subject,
    private readonly spots: Readonly<Record<Scene['spot'], StandingSpot>>,
    draws?: number,
  ) {
    const shelves = (): AdviceShelves => ({
      ranged: new FitShelf(subject, draws),
      plain: new FitShelf(subject, PLAIN_DRAWS),
    });
    this.#shelves = { page: shelves(), wall: shelves() };
    this.#winters = subject.winters.complete.filter((flag) => flag === 1).length;
  }

  /** The class of every row. */
  rows(question: CounterQuestion): readonly RowAdvice[] {
    const scene = sceneOf(question.tree, question.answers);
    return question.rows.map((row) => this.#row(row, scene, question));
  }

  /**
   * The two questions whose answers move most rows across classes, most first; none that moves nothing. A type that is told
   * for a pot only because the buyer has nothing else is not moved by that. Yields the share done.
   */
  *asking(question: CounterQuestion): Steps<readonly AskedOfCustomer[]> {
    const { rows, tree, answers, hasSpot } = question;
    const hasAges = rows.length > 0 && rows.every(({ ageYears }) => ageYears !== null);
    const left = unknownsLeft({ tree, hasSpot, hasAges }, answers);
    const scene = sceneOf(tree, answers);
    const now = rows.map((row) => this.#classOf(row, scene, question).advice);
    const asked: (AskedOfCustomer & { readonly moves: number })[] = [];
    for (const [i, unknown] of left.entries()) {
      const options: AskedOfCustomer['options'][number][] = [];
      for (const [k, value] of CUSTOMER_ANSWERS[unknown].entries()) {
        const other = sceneOf(tree, { ...answers, [unknown]: value });
        const moved =
          k === 0 ? [] : rows.flatMap((row, at) => this.#moved(row, now[at], other, question) ?? []);
        options.push({ value, assumed: k === 0, moved });
        yield (i + (k + 1) / CUSTOMER_ANSWERS[unknown].length) / left.length;
      }
      const keys = new Set(options.flatMap(({ moved }) => moved.filter(isNews).map(({ key }) => key)));
      asked.push({ unknown, options, moves: keys.size });
    }
    return asked
      .filter(({ moves }) => moves > 0)
      .sort((a, b) => b.moves - a.moves)
      .slice(0, QUESTIONS_ASKED)
      .map(({ unknown, options }) => ({ unknown, options }));
  }

  #moved(row: AdvisedRow, from: TypeAdvice['advice'], scene: Scene, question: CounterQuestion): Moved | null {
    const to = this.#classOf(row, scene, question).advice;
    return to === from ? null : { key: row.key, typeId: row.type.id, from, to };
  }

  #classOf(row: AdvisedRow, scene: Scene, question: CounterQuestion): TypeAdvice {
    return adviseType(this.#asked(row, scene, question).question);
  }

  #row(row: AdvisedRow, scene: Scene, question: CounterQuestion): RowAdvice {
    const {
      plans,
      question: asked,
      tree,
      coverNights,
      potNights,
      figuresUnder,
    } = this.#asked(row, scene, question);
    const { advice, plan, record } = adviseType(asked);
    const usable = plans.filter(({ nightWork }) => scene.buyer.atHome || !nightWork);
    const shown = plan === null ? usable.at(-1) : plans[plan];
    const inGround = scene.buyer.stands !== 'pot';
    const staysOut = advice === 'in-pot' && !scene.buyer.atHome;
    const { type } = row;
    return {
      key: row.key,
      typeId: type.id,
      name: type.name,
      use: type.use,
      ageYears: tree.ageYears,
      advice,
      record,
      bare: figuresUnder([], !inGround),
      covered:
        shown && inGround
          ? { plan: shown, does: plan !== null, figures: figuresUnder(shown.ids, false) }
          : null,
      coverNights,
      potNights,
      staysOut,
      inGarage:
        (advice === 'in-pot' && !staysOut) || advice === 'pot-or-not' ? figuresUnder(POT_COVER, true) : null,
    };
  }

  /** The question of a row's class; figures are worked out when the rules look at them. */
  #asked({ type, ageYears }: AdvisedRow, scene: Scene, { pageCovers, nights }: CounterQuestion) {
    const tree = { ...scene.tree, ageYears: ageYears ?? scene.tree.ageYears };
    const spot = this.spots[scene.spot];
    const shelves = this.#shelves[scene.spot];
    const figuresUnder = (ids: readonly CoverId[], container: boolean): LossFigures =>
      lossFigures({ type, tree: { ...tree, container }, gains: gainsOnSpot(spot, ids) }, shelves);
    const counted = nights[scene.spot]?.[type.id];
    const coverNights = counted?.ground[nightsIndex(tree)] ?? null;
    const potNights = counted?.pot[nightsIndex(tree)] ?? null;
    const plans = plansFor(pageCovers);
    const asked: AdviceQuestion = {
      winters: this.#winters,
      get bare() {
        return shortEnds(figuresUnder([], false));
      },
      plans: plans.map(({ ids, nightWork }) => ({
        get ends() {
          return shortEnds(figuresUnder(ids, false));
        },
        nightWork,
        nights: coverNights?.mean ?? null,
      })),
      pot: {
        get bare() {
          return shortEnds(figuresUnder([], true));
        },
        nights: potNights?.mean ?? null,
      },
      buyer: scene.buyer,
    };
    return { plans, question: asked, tree, coverNights, potNights, figuresUnder };
  }
}

/** Standing in a pot because there is nothing else is no news of the type. */
function isNews({ from, to }: Moved): boolean {
  const potted = to === 'in-pot' || to === 'pot-or-not';
  return !(potted && (from === 'plant-out' || from === 'with-plan'));
}
