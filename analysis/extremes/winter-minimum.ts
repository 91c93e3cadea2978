import { gevReturnLevel, gevSurvival, type Gev } from './gev.ts';

/** Values of winters with the sign turned: the coldest winter is the largest. A type of its own, so it can't leak. */
export type NegatedMinima = Float64Array & { readonly negatedMinima: true };

/** Turns the sign of winter values in °C; NaN (no cold night) is left out. */
export function negateMinima(valuesC: ArrayLike<number>): NegatedMinima {
  let kept = 0;
  for (let i = 0; i < valuesC.length; i++) if (!Number.isNaN(valuesC[i]!)) kept++;
  const negated = new Float64Array(kept);
  for (let i = 0, j = 0; i < valuesC.length; i++) if (!Number.isNaN(valuesC[i]!)) negated[j++] = -valuesC[i]!;
  return negated as NegatedMinima;
}

/** Chance that a winter's value is at or below `thresholdC`, from a GEV fitted to negated values. */
export function chanceAtOrBelow(thresholdC: number, negatedGev: Gev): number {
  return gevSurvival(-thresholdC, negatedGev);
}

/** The level in °C that about 1 winter in `periodWinters` reaches or passes downwards. */
export function levelOfPeriod(periodWinters: number, negatedGev: Gev): number {
  return -gevReturnLevel(periodWinters, negatedGev);
}
