import { durationWeights } from '../records/nights.ts';
import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';
import type { Gains } from '../winter/winter-minima.ts';
import { JOINT_CAP } from './joint-gain.ts';
import type { Subject } from './subject.ts';
import { SurfaceFits } from './surface-fits.ts';

/** Steps between the gains tried, °C. */
const STEP_C = fahrenheitDifferenceToCelsius(2);

/**
 * Curves of one place at gains above the chosen ones, in steps up to the joint cap. A curve drawn anew for a larger gain can
 * come out with a shorter period, since its shape and scale are estimated anew; then the shorter one holds for the
 * smaller gain too (design 3.5), so that more cover never shortens what is said.
 */
export class GainLadder {
  #fits: readonly SurfaceFits[] | null = null;
  /** By limit: many types share theirs. */
  readonly #shortest = new Map<number, number>();

  constructor(
    private readonly subject: Subject,
    private readonly hours: number,
    private readonly gains: Gains,
  ) {}

  /** Made when first asked: curves of depth and duration never ask. */
  #larger(): readonly SurfaceFits[] {
    const { subject, hours, gains } = this;
    const cell = {
      cell: 0,
      winters: subject.winters,
      error: subject.interpolation?.[durationWeights(hours).lower] ?? null,
      neighbours: subject.neighbours,
    };
    const above = stepsAbove(gains.calmC, JOINT_CAP.calmC).flatMap((calmC) =>
      stepsAbove(gains.windyC, JOINT_CAP.windyC).map((windyC) => ({ calmC, windyC })),
    );
    // The first is the gain itself, which has its own fit.
    return above.slice(1).map((larger) => new SurfaceFits([cell], hours, larger, null));
  }

  /** Shortest period for a limit at any of the larger gains. */
  shortest(limitC: number): number {
    let shortest = this.#shortest.get(limitC);
    if (shortest === undefined) {
      this.#fits ??= this.#larger();
      shortest = Math.min(...this.#fits.map((fits) => fits.periods(limitC)[0]), Infinity);
      this.#shortest.set(limitC, shortest);
    }
    return shortest;
  }
}

/** The gain itself and every whole step above it. */
function stepsAbove(gainC: number, capC: number): number[] {
  const steps = [gainC];
  for (let step = Math.floor(gainC / STEP_C) + 1; step * STEP_C <= capC + 1e-9; step++)
    if (step * STEP_C > gainC + 1e-9) steps.push(step * STEP_C);
  return steps;
}
