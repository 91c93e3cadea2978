/**
 * Generalised extreme-value distribution in Hosking's form: `F(y) = exp(-(1 - k (y - location)/scale)^(1/k))`.
 * `k > 0`: an upper end at `location + scale/k`; `k = 0`: Gumbel; `k < 0`: heavy upper tail. `k` is minus Coles' xi.
 */
export interface Gev {
  readonly location: number;
  readonly scale: number;
  readonly k: number;
}

/** Hosking's k to Coles' xi, and back: the one place where the sign turns. */
export function colesShape(k: number): number {
  return k === 0 ? 0 : -k;
}

/** Below this |k z| the logarithm's series is used: the closed form divides by k. */
const SERIES_BELOW = 1e-4;

/** Reduced variate `-log(1 - k z)/k` of the standardised value `z`; Infinity at or past the upper end. */
export function gevReduced(z: number, k: number): number {
  const kz = k * z;
  if (Math.abs(kz) < SERIES_BELOW) return z * (1 + kz * (0.5 + kz * (1 / 3 + kz * (0.25 + kz * 0.2))));
  if (kz >= 1) return k > 0 ? Infinity : -Infinity;
  return -Math.log1p(-kz) / k;
}

/** Chance of a value at or below `y`. */
export function gevCdf(y: number, gev: Gev): number {
  return Math.exp(-Math.exp(-gevReduced((y - gev.location) / gev.scale, gev.k)));
}

/** Chance of a value above `y`, exact also where it is tiny. */
export function gevSurvival(y: number, gev: Gev): number {
  return -Math.expm1(-Math.exp(-gevReduced((y - gev.location) / gev.scale, gev.k)));
}

/**
 * As {@link gevSurvival}, for arrays of parameters: writes the chance of a value above `y` under each set. Good to 11
 * digits, at half the cost (plain `log` and `exp` wherever they lose no more than that).
 */
export function gevSurvivals(
  y: number,
  location: Float64Array,
  scale: Float64Array,
  shape: Float64Array,
  out: Float64Array,
): void {
  for (let i = 0; i < out.length; i++) {
    const k = shape[i]!;
    const z = (y - location[i]!) / scale[i]!;
    const kz = k * z;
    // -log F; past the upper end it is 0, before the lower end infinite.
    const rate =
      kz < SERIES_BELOW && kz > -SERIES_BELOW
        ? Math.exp(-gevReduced(z, k))
        : kz < 1
          ? Math.exp(Math.log(1 - kz) / k)
          : k > 0
            ? 0
            : Infinity;
    out[i] = rate < 1e-4 ? rate * (1 - rate * (0.5 - rate / 6)) : 1 - Math.exp(-rate);
  }
}

/** Standardised quantile `(1 - e^(-k g))/k` of the reduced variate `g = -log(-log F)`. */
export function gevStandardised(reduced: number, k: number): number {
  const kg = k * reduced;
  if (Math.abs(kg) < SERIES_BELOW)
    return reduced * (1 - kg * (0.5 - kg * (1 / 6 - kg * (1 / 24 - kg * (1 / 120)))));
  return -Math.expm1(-kg) / k;
}

/**
 * The value that is not passed with chance `p`.
 * @param p strictly between 0 and 1.
 * @throws RangeError otherwise.
 */
export function gevQuantile(p: number, gev: Gev): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`A chance must lie strictly between 0 and 1, not ${p}.`);
  return gev.location + gev.scale * gevStandardised(-Math.log(-Math.log(p)), gev.k);
}

/** The value passed once in `period` blocks on average: the quantile at `1 - 1/period`. `period` must be above 1. */
export function gevReturnLevel(period: number, gev: Gev): number {
  if (!(period > 1)) throw new RangeError(`A return period must be above 1, not ${period}.`);
  return gev.location + gev.scale * gevStandardised(-Math.log(-Math.log1p(-1 / period)), gev.k);
}

/** Blocks between passings of `y` on average: `1 / gevSurvival`, Infinity past the upper end. */
export function gevReturnPeriod(y: number, gev: Gev): number {
  return 1 / gevSurvival(y, gev);
}

/** Upper end of the values, Infinity unless k is above 0. */
export function gevUpperEnd(gev: Gev): number {
  return gev.k > 0 ? gev.location + gev.scale / gev.k : Infinity;
}
