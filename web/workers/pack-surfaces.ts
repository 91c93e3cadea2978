import { limitC } from '../../analysis/answer/level-answer.ts';
import { placeCells, type PlaceCells } from '../../analysis/answer/place-cells.ts';
import type { PlaceHistories, WinterSource } from '../../analysis/answer/place-histories.ts';
import { plainGrid } from '../../analysis/answer/plain-grid.ts';
import { SurfaceFits } from '../../analysis/answer/surface-fits.ts';
import { RECENT_WINTERS } from '../../analysis/extremes/trend.ts';
import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { findType } from '../../analysis/tree/catalogue.ts';
import { gainsAt } from '../../analysis/winter/gain-spread.ts';
import type { Surface, SurfaceQuestion } from '../state/ports.ts';
import { protectionOf } from './protection-of.ts';

/** Sets of curves kept: a cover tried makes one of its own for each number of hours. */
const MOST_FITS = 12;

/**
 * Return-period surfaces of one pack. The winters of all cells are worked out once for some hours of cold, the curves once
 * for all winters or the last 30; a threshold or a tree that changes then only asks the curves.
 */
export class PackSurfaces {
  readonly #cells = new Map<number, Promise<PlaceCells>>();
  readonly #fits = new Map<string, SurfaceFits>();

  constructor(
    private readonly source: WinterSource,
    private readonly histories: PlaceHistories,
  ) {}

  /** @returns null when overtaken */
  async answer(
    { typeId, level, tree, winters, protection }: SurfaceQuestion,
    overtaken: () => Promise<boolean>,
  ): Promise<Surface | null> {
    const type = findType(typeId);
    if (!type) throw new InputError(t`Type "${typeId}" is not among the types known.`);
    const { hours } = type.thresholds[level];
    const own = await this.source.grid();
    const grid = own ?? plainGrid(this.source.stations);
    let working = this.#cells.get(hours);
    if (!working) {
      // Goes on when overtaken: the newer question, about a tree a year older, wants the same cells.
      working = placeCells(this.histories, grid, hours, overtaken);
      working.catch(() => this.#cells.delete(hours));
      this.#cells.set(hours, working);
    }
    const { cells, states } = await working;
    if (await overtaken()) return null;
    const gains = gainsAt((await protectionOf(protection)).gains[level], 'centreC');
    const key = `${hours} ${winters} ${gains.calmC} ${gains.windyC}`;
    let fits = this.#fits.get(key);
    if (!fits) {
      fits = new SurfaceFits(cells, hours, gains, winters === 'all' ? null : RECENT_WINTERS);
    }
    // Asked about last, forgotten last.
    this.#fits.delete(key);
    this.#fits.set(key, fits);
    if (this.#fits.size > MOST_FITS) this.#fits.delete(this.#fits.keys().next().value!);
    const spread = (values: Float32Array): Float32Array => {
      const all = new Float32Array(states.length).fill(NaN);
      cells.forEach(({ cell }, i) => (all[cell] = values[i]));
      return all;
    };
    const { columns, rows, west, south, stepLonDeg, stepLatDeg } = grid;
    return {
      ...{ columns, rows, west, south, stepLonDeg, stepLatDeg },
      periods: spread(fits.periods(limitC({ type, level, tree }))),
      longestClaims: spread(fits.longestClaims()),
      states,
      knowsElevation: own !== null,
    };
  }
}
