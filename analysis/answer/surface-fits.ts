import { countedPeriod, countHits } from '../extremes/counted.ts';
import { fitCurve, FEWEST_WINTERS_TO_FIT } from '../extremes/fit-winters.ts';
import type { Gev } from '../extremes/gev.ts';
import { gevSurvival } from '../extremes/gev.ts';
import { longestClaim } from '../extremes/headline.ts';
import { averagedChance, type InterpolationError } from '../extremes/interpolation-error.ts';
import type { StationSkewness } from '../extremes/pooled-shape.ts';
import { durationWeights } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { winterMinima, type Gains } from '../winter/winter-minima.ts';
import { interpolationOf } from './fit-book.ts';
import type { PlaceCell } from './place-cells.ts';
import { neighbourSkewness } from './pooled-neighbours.ts';
import { completeValuesC } from './winter-values.ts';

/** The curves of many cells for one number of hours and one pair of gains: asked about every threshold. */
export class SurfaceFits {
  readonly #curves: readonly CellCurve[];

  /**
   * @param recent calendar winters up to a cell's last complete one that count; `null`: the whole record
   */
  constructor(cells: readonly PlaceCell[], hours: number, gains: Gains, recent: number | null) {
    const skewness = new Map<WinterTable, StationSkewness | null>();
    const of = (winters: WinterTable): StationSkewness | null => {
      let found = skewness.get(winters);
      if (found === undefined) {
        found = neighbourSkewness(winters, hours, gains);
        skewness.set(winters, found);
      }
      return found;
    };
    this.#curves = cells.map((cell) => curveOf(cell, hours, gains, recent, of));
  }

  /** Longest period claimed in each cell: twice its winters. */
  longestClaims(): Float32Array {
    return Float32Array.from(this.#curves, ({ valuesC }) => longestClaim(valuesC.length));
  }

  /** Winters between hits at a limit in each cell as `FittedWinters` has it; Infinity where none is to be expected. */
  periods(limitC: number): Float32Array {
    return Float32Array.from(this.#curves, ({ valuesC, curve }) => {
      if (!curve) return countedPeriod(countHits(valuesC, limitC), valuesC.length).period;
      const { gev, share, interpolation } = curve;
      const chance = (levelC: number): number => gevSurvival(-levelC, gev);
      return 1 / (share * (interpolation ? averagedChance(chance, limitC, interpolation) : chance(limitC)));
    });
  }
}

interface CellCurve {
  readonly valuesC: Float64Array;
  /** `null` with fewer than 20 winters, or where no curve can be drawn: then the count answers. */
  readonly curve: {
    readonly gev: Gev;
    readonly share: number;
    readonly interpolation: InterpolationError | null;
  } | null;
}

function curveOf(
  { winters, errors, neighbours }: PlaceCell,
  hours: number,
  gains: Gains,
  recent: number | null,
  skewnessOf: (winters: WinterTable) => StationSkewness | null,
): CellCurve {
  const minima = winterMinima(winters, hours, gains);
  const valuesC = completeValuesC(recent === null ? winters : lastWinters(winters, recent), minima);
  if (valuesC.length < FEWEST_WINTERS_TO_FIT) return { valuesC, curve: null };
  const interpolation = interpolationOf(errors?.[durationWeights(hours).lower], valuesC);
  const pool = neighbours.flatMap((neighbour) => skewnessOf(neighbour) ?? []);
  const curve = fitCurve({ valuesC, neighbours: pool, interpolation });
  return { valuesC, curve: curve && { gev: curve.gev, share: curve.share, interpolation } };
}

/** The same winters with only the last `span` calendar winters up to the last complete one counted. */
function lastWinters(winters: WinterTable, span: number): WinterTable {
  const last = winters.winter[winters.complete.lastIndexOf(1)];
  return {
    ...winters,
    complete: winters.complete.map((whole, w) => (winters.winter[w] > last - span ? whole : 0)),
  };
}
