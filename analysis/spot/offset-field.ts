import { combine, type KindWeights } from './combine.ts';
import { coversGround, groundTaken } from './ground-taken.ts';
import { prepareYard } from './prepare-yard.ts';
import { findShares } from './spot-shares.ts';
import type { Yard } from './yard.ts';

/** More cells than this don't repaint fast enough; the step is then coarser. */
export const CELLS_MAX = 40_000;

/**
 * Offsets all over a plot, each cell's that of its middle. Cells go from the south-west corner east, then north; the
 * last of a row or column may reach beyond the plot. °C.
 */
export interface OffsetField {
  readonly columns: number;
  readonly rows: number;
  /** Side of a cell, m: what was asked for, or coarser so that there are at most `CELLS_MAX` cells. */
  readonly stepM: number;
  readonly calmC: Float32Array;
  readonly windyC: Float32Array;
  /** Half of the distance between low and high end. */
  readonly calmHalfRangeC: Float32Array;
  readonly windyHalfRangeC: Float32Array;
  /** 1 where no tree can stand: in a building or water, on a wall or windbreak. All degrees are 0 there. */
  readonly blocked: Uint8Array;
}

/** Side of a cell, m, for a plot: at least `stepM`. */
export function fieldStepM({ widthM, depthM }: Pick<Yard, 'widthM' | 'depthM'>, stepM = 0.5): number {
  let step = stepM;
  while (Math.ceil(widthM / step) * Math.ceil(depthM / step) > CELLS_MAX) step += stepM / 2;
  return step;
}

/** The offset field of a yard at a latitude, whose sign says which way the midday sun stands. */
export function offsetField(yard: Yard, latDeg: number, stepM = 0.5): OffsetField {
  const step = fieldStepM(yard, stepM);
  const columns = Math.ceil(yard.widthM / step);
  const rows = Math.ceil(yard.depthM / step);
  const cells = columns * rows;
  const field: OffsetField = {
    columns,
    rows,
    stepM: step,
    calmC: new Float32Array(cells),
    windyC: new Float32Array(cells),
    calmHalfRangeC: new Float32Array(cells),
    windyHalfRangeC: new Float32Array(cells),
    blocked: new Uint8Array(cells),
  };
  const prepared = prepareYard(yard, latDeg);
  const taken = groundTaken(yard);
  const { calm, windy } = prepared;
  for (let cell = 0; cell < cells; cell++) {
    const eastM = ((cell % columns) + 0.5) * step;
    const northM = (Math.floor(cell / columns) + 0.5) * step;
    if (coversGround(taken, eastM, northM, step / 2)) {
      field.blocked[cell] = 1;
      continue;
    }
    const { calm: calmShares, windy: windyShares, overhead } = findShares(prepared, eastM, northM);
    combine(calm, calmShares, overhead[0]);
    combine(windy, windyShares, overhead[0]);
    field.calmC[cell] = calm.total[1];
    field.windyC[cell] = windy.total[1];
    field.calmHalfRangeC[cell] = halfRangeC(calm);
    field.windyHalfRangeC[cell] = halfRangeC(windy);
  }
  return field;
}

function halfRangeC({ total }: KindWeights): number {
  return (total[2] - total[0]) / 2;
}
