import { cholesky, solveCholesky } from './positive-definite.ts';

/** A function's value and derivatives at a point; `value` is Infinity on forbidden ground. */
export interface DerivativePoint {
  value: number;
  readonly gradient: Float64Array;
  readonly hessian: Float64Array;
  readonly size: number;
}

/** Working memory of {@link minimiseNewton}, so that many small problems allocate nothing. */
export interface NewtonWorkspace {
  readonly step: Float64Array;
  readonly trial: Float64Array;
  readonly damped: Float64Array;
  readonly factor: Float64Array;
}

/** Working memory for `size` variables. */
export function newtonWorkspace(size: number): NewtonWorkspace {
  return {
    step: new Float64Array(size),
    trial: new Float64Array(size),
    damped: new Float64Array(size * size),
    factor: new Float64Array(size * size),
  };
}

/**
 * Minimises by Newton's method with exact second derivatives: the diagonal is raised until the matrix is positive
 * definite, and steps are halved until the value falls. Changes `x` in place and leaves `point` filled there.
 * @param fill sets `point` at `x` and returns its value.
 * @returns true when the expected gain of another step fell below `tolerance`.
 */
export function minimiseNewton(
  fill: (x: Float64Array, point: DerivativePoint) => number,
  x: Float64Array,
  point: DerivativePoint,
  work: NewtonWorkspace,
  tolerance = 1e-13,
  iterations = 60,
): boolean {
  const { size, gradient, hessian } = point;
  const { step, trial, damped, factor } = work;
  let value = fill(x, point);
  if (value === Infinity) return false;
  for (let iteration = 0; iteration < iterations; iteration++) {
    damped.set(hessian);
    for (let damping = 3e-3; !cholesky(damped, size, factor); damping *= 10) {
      if (damping > 1e12) return false;
      for (let i = 0; i < size; i++) {
        const at = i * size + i;
        damped[at] = hessian[at]! + damping * (Math.abs(hessian[at]!) + 1e-12);
      }
    }
    solveCholesky(factor, size, gradient, step);
    let gain = 0;
    for (let i = 0; i < size; i++) gain += step[i]! * gradient[i]!;
    if (gain < tolerance) return true;
    let share = 1;
    for (; share > 1e-14; share *= 0.5) {
      for (let i = 0; i < size; i++) trial[i] = x[i]! - share * step[i]!;
      const next = fill(trial, point);
      if (next <= value - 1e-4 * share * gain) {
        value = next;
        break;
      }
      // Rounding hides a gain this small: as good as there.
      if (gain < 1e-9 && Math.abs(next - value) <= 1e-12 * (1 + Math.abs(value))) {
        x.set(trial);
        return true;
      }
    }
    if (share <= 1e-14) {
      fill(x, point);
      return false;
    }
    x.set(trial);
  }
  return false;
}
