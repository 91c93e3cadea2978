import type { BestSpot } from '../../../analysis/spot/best-spots.ts';
import type { OffsetField } from '../../../analysis/spot/offset-field.ts';
import type { Yard } from '../../../analysis/spot/yard.ts';
import { isSuperseded } from '../../state/later-answer.svelte.ts';
import type { YardClient } from '../../workers/yard-client.ts';

const FINEST_STEP_M = 0.5;
/** Cells worked out at most, at rest and while something is dragged. */
const CELLS_AT_REST = 14_000;
const CELLS_IN_MOTION = 1_500;

/** Step of the grid for a plot, m. */
export function askedStepM({ widthM, depthM }: Pick<Yard, 'widthM' | 'depthM'>, inMotion: boolean): number {
  const most = inMotion ? CELLS_IN_MOTION : CELLS_AT_REST;
  return Math.max(FINEST_STEP_M, Math.sqrt((widthM * depthM) / most));
}

/** A field, and the yard it is of. */
export interface FieldOfYard {
  readonly yard: Yard;
  readonly field: OffsetField;
}

/**
 * The field and the best spots on the page. While something is dragged every answer that comes is shown, though a newer
 * question is on its way: else nothing would be seen until the pointer rests.
 */
export class FieldState {
  #shown = $state.raw<FieldOfYard | null>(null);
  #best = $state.raw<readonly BestSpot[] | null>(null);
  #error = $state<string | null>(null);
  #asked = 0;
  #came = 0;

  constructor(private readonly client: Pick<YardClient, 'field' | 'best'>) {}

  /** The newest field that came. */
  get shown(): FieldOfYard | null {
    return this.#shown;
  }
  /** Best spots of the yard at rest, `null` while they are worked out. */
  get best(): readonly BestSpot[] | null {
    return this.#best;
  }
  get error(): string | null {
    return this.#error;
  }

  forget(): void {
    this.#came = ++this.#asked;
    this.#shown = null;
    this.#best = null;
    this.#error = null;
  }

  async ask(yard: Yard, latDeg: number, inMotion: boolean): Promise<void> {
    const turn = ++this.#asked;
    try {
      const field = await this.client.field({ yard, latDeg, stepM: askedStepM(yard, inMotion) });
      if (turn < this.#came) return;
      this.#came = turn;
      this.#shown = { yard, field };
      this.#error = null;
    } catch (error) {
      this.#fail(error, turn);
    }
  }

  async askBest(yard: Yard, latDeg: number, grownWidthM: number): Promise<void> {
    const turn = this.#asked;
    this.#best = null;
    try {
      const best = await this.client.best({ yard, latDeg, grownWidthM });
      if (turn === this.#asked) this.#best = best;
    } catch (error) {
      this.#fail(error, turn);
    }
  }

  #fail(error: unknown, turn: number): void {
    if (turn < this.#came || isSuperseded(error)) return;
    this.#error = error instanceof Error ? error.message : String(error);
  }
}
