import type { CitrusType } from '../tree/catalogue.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import type { TreeState } from '../tree/penalties.ts';
import { adviseType, type AdviceQuestion, type OpenAdvice, type ShortEnds } from './advice.ts';
import { sceneOf } from './advice-customer.ts';
import { lossFigures, shortEnds, type AdviceShelves } from './advice-figures.ts';
import { limitC } from './level-answer.ts';

/** A cover that a class is looked for under. */
export interface BatchPlan {
  readonly gains: LevelGainSpreads;
  readonly nightWork: boolean;
}

/** What classes are made from: the tree in the ground on its spot, uncovered and under each of the plans. */
export interface BatchAdvising {
  readonly types: readonly CitrusType[];
  readonly tree: TreeState;
  /** Of the spot alone. */
  readonly bare: LevelGainSpreads;
  /** The strongest of the usual covers, and the one chosen where there is one. */
  readonly plans: readonly BatchPlan[];
}

/**
 * The class of each type at a place as the counter gives it before anything is known of a buyer. Ends are worked out when the
 * rules look at them. Nights are not counted, so that a pot which must come in and "not here" stay one class.
 */
export function adviseBatch(
  { types, tree, bare, plans }: BatchAdvising,
  winters: number,
  shelves: AdviceShelves,
): (OpenAdvice | null)[] {
  const ends = new EndsOnce(shelves);
  const { tree: inGround, buyer } = sceneOf(tree, {});
  const inPot = { ...inGround, container: true };
  return types.map((type) => {
    const question: AdviceQuestion = {
      winters,
      get bare() {
        return ends.of(type, inGround, bare);
      },
      plans: plans.map(({ gains, nightWork }) => ({
        get ends() {
          return ends.of(type, inGround, gains);
        },
        nightWork,
        nights: null,
      })),
      pot: {
        get bare() {
          return ends.of(type, inPot, bare);
        },
        nights: null,
      },
      buyer,
    };
    return adviseType(question).advice;
  });
}

/** Many types share their thresholds: what is asked twice is worked out once. */
class EndsOnce {
  readonly #known = new Map<LevelGainSpreads, Map<string, ShortEnds>>();

  constructor(private readonly shelves: AdviceShelves) {}

  of(type: CitrusType, tree: TreeState, gains: LevelGainSpreads): ShortEnds {
    let known = this.#known.get(gains);
    if (!known) this.#known.set(gains, (known = new Map()));
    const key = thresholdsKey(type, tree);
    let ends = known.get(key);
    if (!ends) known.set(key, (ends = shortEnds(lossFigures({ type, tree, gains }, this.shelves))));
    return ends;
  }
}

/** All that an end depends on but the gains. */
function thresholdsKey(type: CitrusType, tree: TreeState): string {
  const [leaf, kill] = [type.thresholds.leaf, type.thresholds.kill];
  return [
    leaf.hours,
    limitC({ type, level: 'leaf', tree }),
    kill.hours,
    ...[kill.lowC, kill.centreC, kill.highC].map((ownC) => limitC({ type, level: 'kill', tree }, ownC)),
  ].join(' ');
}
