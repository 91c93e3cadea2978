import { MISSING_HUNDREDTHS } from '../../../analysis/records/nights.ts';
import {
  AGE_CLASS_FROM,
  LOSSES,
  MARGINS_A_WINTER,
  marginIndex,
  READINGS,
  type WinterMargins,
} from '../../../analysis/tree/winter-margins.ts';

/** °C above the mature kill threshold at which an invented tree loses each thing, and its penalties by age class. */
const ABOVE_KILL_C = { flush: 8, fruit: 5, leaf: 4, wood: 3, kill: 0 };
const AGE_PENALTY_C = [3.06, 1.67, 0.83, 0];
const LOAD_PENALTY_C = 0.83;

/** Margins of winters told by their coldest value alone, all complete: an invented tree killed at `killC` when mature and without a crop. */
export function marginsOfValues(valuesC: ArrayLike<number>, killC: number): WinterMargins {
  const count = valuesC.length;
  const margins = new Int16Array(count * MARGINS_A_WINTER).fill(MISSING_HUNDREDTHS);
  for (let j = 0; j < count; j++)
    for (const reading of READINGS)
      for (let ageClass = 0; ageClass < AGE_CLASS_FROM.length; ageClass++)
        for (const bearing of [false, true]) {
          const at = marginIndex(j, { reading, ageClass, bearing });
          const penaltyC = AGE_PENALTY_C[ageClass]! + (bearing ? LOAD_PENALTY_C : 0);
          LOSSES.forEach((loss, l) => {
            const moved = loss === 'flush' || loss === 'fruit' ? 0 : penaltyC;
            margins[at + l] = Math.round(100 * (killC + ABOVE_KILL_C[loss] + moved - valuesC[j]!));
          });
        }
  return {
    winter: Int16Array.from({ length: count }, (_, j) => 1950 + j),
    complete: new Uint8Array(count).fill(1),
    margins,
  };
}

/** `killC` at which a mature tree with a crop is killed at `valueC`. */
export function killCFor(valueC: number): number {
  return valueC - LOAD_PENALTY_C;
}
