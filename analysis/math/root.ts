/**
 * A zero of `f` between `from` and `to`, at whose ends `f` has opposite signs (or is zero). Bisection kept fast by
 * inverse quadratic steps (Brent 1973), so it can't leave the bracket.
 * @param tolerance width of the final bracket, relative to 1 + |root|.
 * @throws RangeError when the signs at the ends are equal.
 */
export function findRoot(f: (x: number) => number, from: number, to: number, tolerance = 1e-12): number {
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0)
    throw new RangeError(`No sign change between ${from} (${fa}) and ${to} (${fb}), so no root to find.`);
  let c = a;
  let fc = fa;
  let previous = b - a;
  let step = previous;
  for (let iteration = 0; iteration < 200; iteration++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      previous = step = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const enough = 0.5 * tolerance * (1 + Math.abs(b));
    const half = 0.5 * (c - b);
    if (Math.abs(half) <= enough || fb === 0) return b;
    if (Math.abs(previous) >= enough && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      if (2 * p < Math.min(3 * half * q - Math.abs(enough * q), Math.abs(previous * q))) {
        previous = step;
        step = p / q;
      } else {
        previous = step = half;
      }
    } else {
      previous = step = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > enough ? step : Math.sign(half) * enough;
    fb = f(b);
  }
  return b;
}
