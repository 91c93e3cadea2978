import type { KeptNights } from '../records/kept-nights.ts';
import { MISSING_HUNDREDTHS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { toHundredths } from '../units/temperature.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import { AirAtTree, NO_NIGHT } from './air-at-tree.ts';
import type { CitrusType } from './catalogue.ts';
import { FLUSH_HOURS, FLUSH_LIMIT_C } from './flush.ts';
import type { LevelGains } from './level-gains.ts';
import { TreeLimits, type LastingState } from './tree-limits.ts';
import {
  AGE_CLASS_FROM,
  LOSSES,
  marginIndex,
  MARGINS_A_WINTER,
  READINGS,
  type Loss,
  type WinterMargins,
} from './winter-margins.ts';
import { winterSpans, type WinterSpans } from './winter-spans.ts';

/** What trees are in on each night, the same for all types at a place: `hardeningOfNights` and `flushOfNights`. */
export interface NightStates {
  readonly hardening: Float32Array;
  readonly flush: Uint8Array;
}

/** A tree of one type, and what it gains. */
export interface MarginQuestion {
  readonly type: CitrusType;
  /** Age, load and hardening, where given, don't count: every one of them is answered for. */
  readonly tree: LastingState;
  readonly gains: LevelGains;
  /** Last day on which a crop hangs, as `seasonDayOf` counts; `null`: at all times. */
  readonly hangsUntil: number | null;
  readonly hemisphere: Hemisphere;
}

const AGE_CLASSES = AGE_CLASS_FROM.map((_, ageClass) => ageClass);
const WOODY = ['leaf', 'wood', 'kill'] as const;
/** No limit is further than this from a straight line between two limits, hundredths of °C. */
const ROUNDING = 2;

/**
 * Margins of every winter for a tree of a type. At leaf, wood and kill a mature, hardened tree without a crop is hit in the very
 * winters that counting hits gives; the colder reading takes nights on which it wasn't hardened at `1 - hardening` of the
 * penalty for that, where the penalty for age isn't larger; a crop adds its load while it hangs. Fruit and flush have no
 * penalties; a tree that doesn't bear has no fruit to lose. Any number of nights: the worst of each winter decides.
 * @throws RangeError for a type whose hours aren't kept
 */
export function makeMargins(
  nights: KeptNights,
  winters: Pick<WinterTable, 'winter' | 'complete'>,
  state: NightStates,
  { type, tree, gains, hangsUntil, hemisphere }: MarginQuestion,
): WinterMargins {
  const { winter, complete } = winters;
  const margins = new Int16Array(winter.length * MARGINS_A_WINTER).fill(MISSING_HUNDREDTHS);
  const spans = winterSpans(nights, winters, hangsUntil, hemisphere);
  writeFlush(margins, spans, new AirAtTree(nights, FLUSH_HOURS, gains.leaf), state.flush);
  const { hours, centreC } = type.thresholds.fruit;
  writeFruit(margins, spans, new AirAtTree(nights, hours, gains.fruit), toHundredths(centreC));
  const limits = new TreeLimits(type, tree);
  for (const level of WOODY) {
    const threshold = type.thresholds[level];
    const air = new AirAtTree(nights, threshold.hours, gains[level]);
    const writer = new WoodyMargins(air, limits, threshold.centreC, state.hardening);
    writer.write(margins, spans, level);
  }
  return { winter, complete, margins };
}

/** Where a loss of a tree stands in a winter's block, by age class. */
function placesOf(loss: Loss, reading: (typeof READINGS)[number], bearing: boolean): Int32Array {
  return Int32Array.from(
    AGE_CLASSES,
    (ageClass) => marginIndex(0, { reading, ageClass, bearing }) + LOSSES.indexOf(loss),
  );
}

function marginOf(limit: number, air: number): number {
  return air === NO_NIGHT ? MISSING_HUNDREDTHS : limit - air;
}

function writeAt(margins: Int16Array, w: number, places: Int32Array, margin: number): void {
  for (let place = 0; place < places.length; place++) {
    margins[w * MARGINS_A_WINTER + places[place]] = margin;
  }
}

const FLUSH_PLACES = READINGS.flatMap((reading) =>
  [false, true].map((bearing) => placesOf('flush', reading, bearing)),
);
const FRUIT_PLACES = READINGS.map((reading) => placesOf('fruit', reading, true));

function writeFlush(margins: Int16Array, { from, to }: WinterSpans, air: AirAtTree, flush: Uint8Array): void {
  const limit = toHundredths(FLUSH_LIMIT_C);
  for (let w = 0; w < from.length; w++) {
    const margin = marginOf(limit, air.coldest(from[w], to[w], flush));
    for (const places of FLUSH_PLACES) writeAt(margins, w, places, margin);
  }
}

function writeFruit(margins: Int16Array, { from, picked }: WinterSpans, air: AirAtTree, limit: number): void {
  for (let w = 0; w < from.length; w++) {
    const margin = marginOf(limit, air.coldest(from[w], picked[w]));
    for (const places of FRUIT_PLACES) writeAt(margins, w, places, margin);
  }
}

/** Margins at leaf, wood or kill. */
class WoodyMargins {
  readonly #bare: Int32Array;
  readonly #loaded: Int32Array;

  constructor(
    private readonly air: AirAtTree,
    private readonly limits: TreeLimits,
    private readonly thresholdC: number,
    private readonly hardening: Float32Array,
  ) {
    this.#bare = Int32Array.from(limits.agesC, (ageC) => limits.limit(thresholdC, ageC, false));
    this.#loaded = Int32Array.from(limits.agesC, (ageC) => limits.limit(thresholdC, ageC, true));
  }

  write(margins: Int16Array, { from, picked, to }: WinterSpans, level: (typeof WOODY)[number]): void {
    const [softBare, softBearing] = [false, true].map((bearing) =>
      placesOf(level, 'night_by_night', bearing),
    );
    const [hardBare, hardBearing] = [false, true].map((bearing) => placesOf(level, 'hardened', bearing));
    for (let w = 0; w < from.length; w++) {
      const block = w * MARGINS_A_WINTER;
      const before = this.air.coldest(from[w], picked[w]);
      const after = this.air.coldest(picked[w], to[w]);
      const softAfter = this.#softest(picked[w], to[w], after, false);
      const soft = Math.max(this.#softest(from[w], picked[w], before, false), softAfter);
      const softLoaded = Math.max(this.#softest(from[w], picked[w], before, true), softAfter);
      for (let age = 0; age < hardBare.length; age++) {
        const bare = marginOf(this.#bare[age], Math.min(before, after));
        const bearing = Math.max(marginOf(this.#loaded[age], before), marginOf(this.#bare[age], after));
        margins[block + hardBare[age]] = bare;
        margins[block + hardBearing[age]] = bearing;
        // Of young and not hardened the larger counts on each night, so the larger of the two worst nights does.
        margins[block + softBare[age]] = Math.max(bare, soft);
        margins[block + softBearing[age]] = Math.max(bearing, softLoaded);
      }
    }
  }

  /**
   * Largest margin of a mature tree that is hardened as far as the nights say, or that of the coldest night for one hardened in
   * full where that is larger.
   * @param coldest air of these nights
   */
  #softest(from: number, to: number, coldest: number, loaded: boolean): number {
    if (coldest === NO_NIGHT) return MISSING_HUNDREDTHS;
    const { air, limits, thresholdC, hardening } = this;
    const hardened = limits.limit(thresholdC, 0, loaded);
    const reach = limits.limit(thresholdC, limits.notHardenedC, loaded) - hardened;
    let worst = hardened - coldest;
    for (let i = from; i < to; i++) {
      const cold = air.at(i);
      // Few nights can be worse than those before: only for them the sum is made and rounded as for a count of hits.
      if (hardened + reach * (1 - hardening[i]) + ROUNDING - cold <= worst) continue;
      const margin = limits.limit(thresholdC, limits.notHardenedC * (1 - hardening[i]), loaded) - cold;
      if (margin > worst) worst = margin;
    }
    return worst;
  }
}
