/**
 * Value, gradient and second derivatives of the GEV's negative log-likelihood. Parameters in the order location,
 * log scale, Coles' xi and, when there is a covariate, the location's slope on it.
 */
export interface LikelihoodPoint {
  value: number;
  readonly gradient: Float64Array;
  /** Symmetric, by rows, `size` x `size`. */
  readonly hessian: Float64Array;
  readonly size: number;
}

/** Room for a point with 3 parameters, or 4 with a covariate. */
export function likelihoodPoint(size: 3 | 4): LikelihoodPoint {
  return { value: Infinity, gradient: new Float64Array(size), hessian: new Float64Array(size * size), size };
}

/** Shapes at or below -1 have an unbounded likelihood. */
const XI_LIMIT = -1;
/** Below this |xi s|, series in xi s: the closed forms divide by xi three times over. */
const SERIES_BELOW = 0.02;

/**
 * Fills `point` at `parameters`. With `A = log(1 + xi s)/xi`, `s = (y - location)/scale`, one value adds
 * `log scale + (1 + xi) A + e^-A`; everything follows from the derivatives of `A` in `s` and `xi`, which stay smooth
 * through xi = 0.
 * @param covariate one number a value when `point.size` is 4, else null.
 * @returns the value; Infinity where some `y` is impossible or xi <= -1 (derivatives are then not set).
 */
export function gevLikelihood(
  y: Float64Array,
  covariate: Float64Array | null,
  parameters: Float64Array,
  point: LikelihoodPoint,
): number {
  const mu = parameters[0]!;
  const sigma = Math.exp(parameters[1]!);
  const xi = parameters[2]!;
  const slope = covariate ? parameters[3]! : 0;
  const n = y.length;
  point.value = Infinity;
  if (xi <= XI_LIMIT || !(sigma > 0)) return Infinity;
  let value = n * parameters[1]!;
  // Sums of f_s, s f_s, f_xi, f_ss, s f_ss, s^2 f_ss, f_sxi, s f_sxi, f_xixi, and those with the covariate.
  let s1 = 0;
  let ss1 = 0;
  let x1 = 0;
  let s2 = 0;
  let ss2 = 0;
  let sss2 = 0;
  let sx = 0;
  let ssx = 0;
  let x2 = 0;
  let ts1 = 0;
  let ts2 = 0;
  let tss2 = 0;
  let tts2 = 0;
  let tsx = 0;
  for (let i = 0; i < n; i++) {
    const t = covariate ? covariate[i]! : 0;
    const s = (y[i]! - mu - slope * t) / sigma;
    const xs = xi * s;
    const w = 1 + xs;
    if (!(w > 0)) return Infinity;
    const inverse = 1 / w;
    let a: number;
    let aX: number;
    let aXX: number;
    if (xs < SERIES_BELOW && xs > -SERIES_BELOW) {
      const q = s * s;
      a =
        s *
        (1 -
          xs * (1 / 2 - xs * (1 / 3 - xs * (1 / 4 - xs * (1 / 5 - xs * (1 / 6 - xs * (1 / 7 - xs / 8)))))));
      aX =
        -q *
        (1 / 2 -
          xs *
            (2 / 3 -
              xs * (3 / 4 - xs * (4 / 5 - xs * (5 / 6 - xs * (6 / 7 - xs * (7 / 8 - (8 * xs) / 9)))))));
      aXX =
        q *
        s *
        (2 / 3 -
          xs *
            (6 / 4 -
              xs * (12 / 5 - xs * (20 / 6 - xs * (30 / 7 - xs * (42 / 8 - xs * (56 / 9 - 7.2 * xs)))))));
    } else {
      a = Math.log(w) / xi;
      const r = s * inverse;
      aX = (r - a) / xi;
      aXX = (-r * r - 2 * aX) / xi;
    }
    const h = Math.exp(-a);
    const c = 1 + xi - h;
    value += (1 + xi) * a + h;
    const fS = c * inverse;
    const fSS = (h - xi * c) * inverse * inverse;
    const fSX = inverse * (1 + h * aX - c * s * inverse);
    s1 += fS;
    ss1 += s * fS;
    x1 += a + c * aX;
    s2 += fSS;
    ss2 += s * fSS;
    sss2 += s * s * fSS;
    sx += fSX;
    ssx += s * fSX;
    x2 += 2 * aX + h * aX * aX + c * aXX;
    if (covariate) {
      ts1 += t * fS;
      ts2 += t * fSS;
      tss2 += t * s * fSS;
      tts2 += t * t * fSS;
      tsx += t * fSX;
    }
  }
  if (!(value < Infinity)) return Infinity;
  point.value = value;
  const g = point.gradient;
  const m = point.hessian;
  const size = point.size;
  g[0] = -s1 / sigma;
  g[1] = n - ss1;
  g[2] = x1;
  m[0] = s2 / (sigma * sigma);
  m[1] = m[size] = (ss2 + s1) / sigma;
  m[2] = m[2 * size] = -sx / sigma;
  m[size + 1] = sss2 + ss1;
  m[size + 2] = m[2 * size + 1] = -ssx;
  m[2 * size + 2] = x2;
  if (covariate) {
    g[3] = -ts1 / sigma;
    m[3] = m[12] = ts2 / (sigma * sigma);
    m[7] = m[13] = (tss2 + ts1) / sigma;
    m[11] = m[14] = -tsx / sigma;
    m[15] = tts2 / (sigma * sigma);
  }
  return value;
}
