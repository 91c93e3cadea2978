import { countHits } from '../extremes/counted.ts';
import { curveThrough, FEWEST_WINTERS_TO_FIT } from '../extremes/fit-winters.ts';
import { gevSurvival, type Gev } from '../extremes/gev.ts';
import { longestClaim } from '../extremes/headline.ts';
import { averagedChance, type InterpolationError } from '../extremes/interpolation-error.ts';
import { shapeAmong, shapeFor, type ShapeEstimate, type StationSkewness } from '../extremes/pooled-shape.ts';
import { durationWeights, MISSING_HUNDREDTHS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { toHundredths } from '../units/temperature.ts';
import { gainsByKindC, type Gains } from '../winter/winter-minima.ts';
import type { PlaceCell } from './place-cells.ts';
import { neighbourSkewness } from './pooled-neighbours.ts';

/** The curves of many cells for one number of hours and one pair of gains: asked about every threshold. */
export class SurfaceFits {
  readonly #curves: readonly CellCurve[];

  /**
   * @param recent calendar winters up to a cell's last complete one that count; `null`: the whole record
   */
  constructor(cells: readonly PlaceCell[], hours: number, gains: Gains, recent: number | null) {
    const maker = new CurveMaker(hours, gains, recent);
    this.#curves = cells.map((cell) => maker.curve(cell));
  }

  /** Longest period claimed in each cell: twice its winters. */
  longestClaims(): Float32Array {
    return Float32Array.from(this.#curves, ({ winters }) => longestClaim(winters));
  }

  /** Winters between hits at a limit in each cell as `FittedWinters` has it; Infinity where none is to be expected. */
  periods(limitC: number): Float32Array {
    return Float32Array.from(this.#curves, ({ winters, negated, curve }) => {
      if (!curve)
        return (
          winters /
          countHits(
            negated!.map((value) => -value),
            limitC,
          )
        );
      const { gev, share, interpolation } = curve;
      const chance = (levelC: number): number => gevSurvival(-levelC, gev);
      return 1 / (share * (interpolation ? averagedChance(chance, limitC, interpolation) : chance(limitC)));
    });
  }
}

interface CellCurve {
  /** Complete winters; without a curve their values too, those with a cold night, the sign turned. */
  readonly winters: number;
  readonly negated: Float64Array | null;
  /** `null` with fewer than 20 winters, or where no curve can be drawn: then the count answers. */
  readonly curve: {
    readonly gev: Gev;
    readonly share: number;
    readonly interpolation: InterpolationError | null;
  } | null;
}

/** Warmer than any level. */
const NO_LEVEL = 2 ** 31 - 1;

/** Makes the curves of cells; what many cells share (stations' skewness, pooled shapes) is worked out once. */
class CurveMaker {
  readonly #shapes = new Map<readonly WinterTable[], ShapeEstimate | null>();
  readonly #gains: readonly number[];
  readonly #lower: number;
  readonly #weight: number;
  #levels = new Int32Array(0);
  #sorted = new Int32Array(0);
  readonly #arrays = new Map<number, Float64Array>();

  constructor(
    private readonly hours: number,
    private readonly gains: Gains,
    private readonly recent: number | null,
  ) {
    this.#gains = gainsByKindC(gains).map(toHundredths);
    ({ lower: this.#lower, weight: this.#weight } = durationWeights(hours));
  }

  curve({ winters, error, neighbours }: PlaceCell): CellCurve {
    const { count, negated } = this.#values(winters);
    if (count < FEWEST_WINTERS_TO_FIT) return { winters: count, negated: negated.slice(), curve: null };
    const interpolation = error && { ...error, meanC: -meanOf(negated) };
    const among = interpolation ? this.#among(neighbours) : null;
    const curve = curveThrough(negated, count, (own) => among ?? shapeFor(own, this.#pool(neighbours)));
    if (!curve) return { winters: count, negated: negated.slice(), curve: null };
    return { winters: count, negated: null, curve: { gev: curve.gev, share: curve.share, interpolation } };
  }

  /**
   * As `winterMinima` and `completeValuesC` have them, sign turned, ascending. The array is this maker's own and filled anew
   * by the next call: thousands of small arrays a refit would cost more than the curves.
   */
  #values(table: WinterTable): { count: number; negated: Float64Array } {
    const { winter, complete, coldest } = table;
    const first = this.recent === null ? -Infinity : winter[complete.lastIndexOf(1)] - this.recent + 1;
    const winters = winter.length;
    if (this.#levels.length !== winters) {
      this.#levels = new Int32Array(winters);
      this.#sorted = new Int32Array(winters);
    }
    const levels = this.#levels.fill(NO_LEVEL);
    for (let kind = 0; kind < coldest.length; kind++) {
      const a = coldest[kind][this.#lower];
      const b = this.#weight > 0 ? coldest[kind][this.#lower + 1] : a;
      const gain = this.#gains[kind];
      for (let w = 0; w < winters; w++) {
        if (a[w] === MISSING_HUNDREDTHS || b[w] === MISSING_HUNDREDTHS) continue;
        const level = (this.#weight > 0 ? Math.round(a[w] + this.#weight * (b[w] - a[w])) : a[w]) + gain;
        if (level < levels[w]) levels[w] = level;
      }
    }
    let count = 0;
    let cold = 0;
    const sorted = this.#sorted;
    // Gains move the winters' order little, so the order of the last time leaves hardly anything to sort.
    for (const w of orderOf(table, levels)) {
      if (!complete[w] || winter[w] < first) continue;
      count++;
      const level = levels[w];
      if (level === NO_LEVEL) continue;
      let at = cold++;
      for (; at > 0 && sorted[at - 1] < level; at--) sorted[at] = sorted[at - 1];
      sorted[at] = level;
    }
    const negated = this.#arrayOf(cold);
    for (let i = 0; i < cold; i++) negated[i] = -(sorted[i] / 100);
    return { count, negated };
  }

  #arrayOf(length: number): Float64Array {
    let array = this.#arrays.get(length);
    if (!array) {
      array = new Float64Array(length);
      this.#arrays.set(length, array);
    }
    return array;
  }

  #pool(neighbours: readonly WinterTable[]): StationSkewness[] {
    return neighbours.flatMap((winters) => neighbourSkewness(winters, this.hours, this.gains) ?? []);
  }

  #among(neighbours: readonly WinterTable[]): ShapeEstimate | null {
    let shape = this.#shapes.get(neighbours);
    if (shape === undefined) {
      const pool = this.#pool(neighbours);
      shape = pool.length > 0 ? shapeAmong(pool) : null;
      this.#shapes.set(neighbours, shape);
    }
    return shape;
  }
}

/** Indices of a table's winters, mildest first when they were first asked about. */
const orders = new WeakMap<WinterTable, Uint16Array>();

function orderOf(winters: WinterTable, levels: Int32Array): Uint16Array {
  let order = orders.get(winters);
  if (!order) {
    order = Uint16Array.from(levels.keys()).sort((a, b) => levels[b] - levels[a]);
    orders.set(winters, order);
  }
  return order;
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return sum / values.length;
}
