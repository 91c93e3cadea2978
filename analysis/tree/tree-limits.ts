import { toHundredths } from '../units/temperature.ts';
import type { CitrusType } from './catalogue.ts';
import { MATURE_TREE, penaltiesAt, totalPenaltyC, type PenaltyCause, type TreeState } from './penalties.ts';
import { AGE_CLASS_FROM } from './winter-margins.ts';

/** What of a tree stays the same through its life. */
export type LastingState = Pick<TreeState, 'condition' | 'container' | 'rootstock'>;

/**
 * Limits of one tree of a type at leaf, wood and kill, for any age, hardening and load. They are the sums that
 * `totalPenaltyC` makes, added in its order, so that both round to the same hundredth.
 */
export class TreeLimits {
  /** Penalty of each age class, °C. */
  readonly agesC: readonly number[];
  /** Penalty of a mature tree that isn't hardened at all, °C. */
  readonly notHardenedC: number;
  readonly #conditionC: number;
  readonly #loadC: number;
  readonly #containerC: number;
  readonly #rootstockC: number;

  constructor(type: CitrusType, { condition, container, rootstock }: LastingState) {
    const totalC = (state: Partial<TreeState>): number =>
      totalPenaltyC(penaltiesAt('leaf', type, { ...MATURE_TREE, ...state }));
    this.agesC = AGE_CLASS_FROM.map((ageYears) => totalC({ ageYears }));
    this.notHardenedC = totalC({ hardened: false });
    const lasting = penaltiesAt('leaf', type, {
      ...MATURE_TREE,
      condition,
      container,
      rootstock,
      fruitLoad: true,
    });
    const partC = (cause: PenaltyCause): number =>
      totalPenaltyC(lasting.filter((penalty) => penalty.cause === cause));
    this.#conditionC = partC('condition');
    this.#loadC = partC('fruit_load');
    this.#containerC = partC('container');
    this.#rootstockC = partC('rootstock');
  }

  /**
   * Threshold plus penalties, hundredths of °C.
   * @param tenderC the larger of the penalties for age and for want of hardening
   * @param loaded whether a crop hangs
   */
  limit(thresholdC: number, tenderC: number, loaded: boolean): number {
    const loadC = loaded ? this.#loadC : 0;
    return toHundredths(
      thresholdC + (tenderC + this.#conditionC + loadC + this.#containerC + this.#rootstockC),
    );
  }
}
