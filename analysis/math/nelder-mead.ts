/** Where a minimiser stopped. */
export interface Minimum {
  readonly at: Float64Array;
  readonly value: number;
  readonly evaluations: number;
  /** False when the allowance of evaluations ran out first. */
  readonly converged: boolean;
}

/**
 * Minimises a function of a few variables without derivatives by the simplex method of Nelder and Mead (1965), started
 * again from its own answer until that stops helping (a collapsed simplex can stall short of the minimum). Values of
 * Infinity or NaN mark forbidden ground.
 * @param step first simplex: one step a variable.
 * @param tolerance spread of values, relative to 1 + |value|, at which a run ends.
 * @throws RangeError when the starting point itself is forbidden.
 */
export function minimiseNelderMead(
  f: (x: Float64Array) => number,
  start: ArrayLike<number>,
  step: ArrayLike<number>,
  tolerance = 1e-12,
  allowance = 20_000,
): Minimum {
  let best: Minimum = {
    at: Float64Array.from(start),
    value: f(Float64Array.from(start)),
    evaluations: 1,
    converged: false,
  };
  if (!Number.isFinite(best.value))
    throw new RangeError(`The search can't start where the value is ${best.value}.`);
  for (let scale = 1; best.evaluations < allowance; scale *= 0.1) {
    const run = oneRun(f, best, step, Math.max(scale, 1e-3), tolerance, allowance - best.evaluations);
    const gain = best.value - run.value;
    best = { ...run, evaluations: best.evaluations + run.evaluations };
    if (run.converged && gain <= tolerance * (1 + Math.abs(run.value))) break;
  }
  return best;
}

interface Corner {
  readonly x: Float64Array;
  readonly value: number;
}

function oneRun(
  f: (x: Float64Array) => number,
  from: Minimum,
  step: ArrayLike<number>,
  scale: number,
  tolerance: number,
  allowance: number,
): Minimum {
  const size = from.at.length;
  let evaluations = 0;
  const evaluate = (x: Float64Array): number => {
    evaluations++;
    const value = f(x);
    return Number.isNaN(value) ? Infinity : value;
  };
  const corners: Corner[] = [{ x: from.at.slice(), value: from.value }];
  for (let i = 0; i < size; i++) {
    const x = from.at.slice();
    x[i] = x[i]! + step[i]! * scale;
    corners.push({ x, value: evaluate(x) });
  }
  const centre = new Float64Array(size);
  const along = (factor: number): Corner => {
    const worst = corners[size]!.x;
    const x = centre.map((c, i) => c + factor * (worst[i]! - c));
    return { x, value: evaluate(x) };
  };
  let converged = false;
  while (evaluations < allowance) {
    corners.sort((p, q) => p.value - q.value);
    const lowest = corners[0]!.value;
    const highest = corners[size]!.value;
    if (highest - lowest <= tolerance * (1 + Math.abs(lowest))) {
      converged = true;
      break;
    }
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < size; j++) sum += corners[j]!.x[i]!;
      centre[i] = sum / size;
    }
    const reflected = along(-1);
    if (reflected.value < lowest) {
      const expanded = along(-2);
      corners[size] = expanded.value < reflected.value ? expanded : reflected;
    } else if (reflected.value < corners[size - 1]!.value) {
      corners[size] = reflected;
    } else {
      const contracted = along(reflected.value < highest ? -0.5 : 0.5);
      if (contracted.value < Math.min(reflected.value, highest)) {
        corners[size] = contracted;
      } else {
        for (let j = 1; j <= size; j++) {
          const x = corners[j]!.x.map((v, i) => 0.5 * (v + corners[0]!.x[i]!));
          corners[j] = { x, value: evaluate(x) };
        }
      }
    }
  }
  corners.sort((p, q) => p.value - q.value);
  return { at: corners[0]!.x, value: corners[0]!.value, evaluations, converged };
}
