/** Rules for the chance of passing the i-th most extreme of n values. */
export const PLOTTING_RULES = ['weibull', 'gringorten', 'cunnane', 'hazen'] as const;
export type PlottingRule = (typeof PLOTTING_RULES)[number];

/** `(i - a)/(n + 1 - 2a)`. */
const OFFSET: Readonly<Record<PlottingRule, number>> = {
  weibull: 0,
  gringorten: 0.44,
  cunnane: 0.4,
  hazen: 0.5,
};

/**
 * Return period given to the value of rank `rank` (1 = most extreme) of `count`: Weibull `i/(n+1)` for plain frequency,
 * Gringorten for Gumbel-like plots, Cunnane between, Hazen. Textbook formulas.
 * @throws RangeError when `rank` is outside 1 to `count`.
 */
export function plottingPeriod(rank: number, count: number, rule: PlottingRule = 'weibull'): number {
  if (!(rank >= 1 && rank <= count)) throw new RangeError(`A rank must lie in 1 to ${count}, not ${rank}.`);
  const a = OFFSET[rule];
  return (count + 1 - 2 * a) / (rank - a);
}
