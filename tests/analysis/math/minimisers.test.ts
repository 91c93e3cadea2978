import { describe, expect, test } from 'vitest';
import { minimiseNelderMead } from '../../../analysis/math/nelder-mead.ts';
import { minimiseNewton, newtonWorkspace, type DerivativePoint } from '../../../analysis/math/newton.ts';
import { findRoot } from '../../../analysis/math/root.ts';

/** Test functions with known minima: Rosenbrock (1960), Powell (1962), Himmelblau (1972), and a shifted sphere. */
const rosenbrock = (x: Float64Array): number => 100 * (x[1]! - x[0]! ** 2) ** 2 + (1 - x[0]!) ** 2;
const powell = (x: Float64Array): number =>
  (x[0]! + 10 * x[1]!) ** 2 + 5 * (x[2]! - x[3]!) ** 2 + (x[1]! - 2 * x[2]!) ** 4 + 10 * (x[0]! - x[3]!) ** 4;
const himmelblau = (x: Float64Array): number =>
  (x[0]! ** 2 + x[1]! - 11) ** 2 + (x[0]! + x[1]! ** 2 - 7) ** 2;

describe('Nelder-Mead', () => {
  test('Rosenbrock from (-1.2, 1) ends at (1, 1)', () => {
    const found = minimiseNelderMead(rosenbrock, [-1.2, 1], [0.5, 0.5]);
    expect(found.converged).toBe(true);
    expect(found.at[0]).toBeCloseTo(1, 5);
    expect(found.at[1]).toBeCloseTo(1, 5);
  });
  test("Powell's singular function from (3, -1, 0, 1) ends near 0", () => {
    expect(minimiseNelderMead(powell, [3, -1, 0, 1], [1, 1, 1, 1]).value).toBeLessThan(1e-9);
  });
  test('Himmelblau from (0, 0) ends in a minimum', () => {
    expect(minimiseNelderMead(himmelblau, [0, 0], [1, 1]).value).toBeLessThan(1e-9);
  });
  test('forbidden ground is walked around', () => {
    const f = (x: Float64Array): number => (x[0]! < 0.5 ? NaN : (x[0]! - 0.2) ** 2);
    expect(minimiseNelderMead(f, [3], [1]).at[0]).toBeCloseTo(0.5, 4);
    expect(() => minimiseNelderMead(f, [0], [1])).toThrow("can't start where the value is NaN");
  });
  test('an allowance that runs out is told', () => {
    expect(minimiseNelderMead(rosenbrock, [-1.2, 1], [0.5, 0.5], 1e-12, 30).converged).toBe(false);
  });
});

test('Newton: Rosenbrock from (-1.2, 1), where the second derivatives are not always positive', () => {
  const fill = (x: Float64Array, point: DerivativePoint): number => {
    const [a, b] = [x[0]!, x[1]!];
    point.gradient.set([-400 * a * (b - a * a) - 2 * (1 - a), 200 * (b - a * a)]);
    point.hessian.set([1200 * a * a - 400 * b + 2, -400 * a, -400 * a, 200]);
    return (point.value = rosenbrock(x));
  };
  for (const start of [
    [-1.2, 1],
    [0, 3],
    [5, -5],
  ]) {
    const x = Float64Array.from(start);
    const point = { value: 0, gradient: new Float64Array(2), hessian: new Float64Array(4), size: 2 };
    expect(minimiseNewton(fill, x, point, newtonWorkspace(2))).toBe(true);
    expect(x[0]).toBeCloseTo(1, 6);
    expect(x[1]).toBeCloseTo(1, 6);
  }
});

describe('roots', () => {
  test.each([
    ['cos x = x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['x^3 = 2', (x: number) => x ** 3 - 2, 0, 2, 2 ** (1 / 3)],
    ['a steep tail', (x: number) => Math.exp(x) - 1e-9, -50, 5, Math.log(1e-9)],
    ['flat around the root', (x: number) => (x - 1) ** 9, 0, 1.7, 1],
    ['root at an end', (x: number) => x, 0, 1, 0],
  ])('%s', (_, f, from, to, root) => {
    expect(findRoot(f, from, to)).toBeCloseTo(root, _ === 'flat around the root' ? 1 : 11);
  });
  test('equal signs are refused', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 2)).toThrow('No sign change between -1 (2) and 2 (5)');
  });
});
