import type { InterpolationError } from '../extremes/interpolation-error.ts';
import { coldestByKind, stationAt } from '../place/place-history.ts';
import type { PlaceModel } from '../place/place-model.ts';
import { pooledMembers } from '../place/pooled-members.ts';
import type { Site } from '../place/site.ts';
import { cellCentre, type PlaceGrid } from '../records/grid.ts';
import { durationWeights } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { PlaceHistories } from './place-histories.ts';

/** What a cell of the grid is: sea, told about, or land beyond the reach of the stations. */
export const CELL_SEA = 0;
export const CELL_TOLD = 1;
export const CELL_OUT_OF_REACH = 2;

/** A cell that is told about, with what a curve needs for some hours of cold. */
export interface PlaceCell {
  /** Index on the grid. */
  readonly cell: number;
  /** Its winters; only the durations that the hours asked for lie between have levels. */
  readonly winters: WinterTable;
  /** Error of the level; `null` on a station. */
  readonly error: InterpolationError | null;
  /** Winters of stations to pool the shape with; cells with the same stations share the list. */
  readonly neighbours: readonly WinterTable[];
}

/** All cells of a grid for some hours of cold. */
export interface PlaceCells {
  readonly cells: readonly PlaceCell[];
  /** By cell of the grid. */
  readonly states: Uint8Array;
}

const NO_LEVELS = new Int16Array(0);
/** Cells worked out between two pauses. */
const CELLS_BETWEEN_PAUSES = 250;

/**
 * Winters of all cells of a grid up to a number of hours: by the same functions as a single point's, so that a cell and
 * `findSubject` at its centre agree to the last hundredth of a degree.
 * @param pause lets other work in between
 */
export async function placeCells(
  histories: PlaceHistories,
  grid: PlaceGrid,
  hours: number,
  pause: () => Promise<unknown>,
): Promise<PlaceCells> {
  const { lower, weight } = durationWeights(hours);
  const last = weight === 0 ? lower : lower + 1;
  const states = new Uint8Array(grid.columns * grid.rows);
  const cells: PlaceCell[] = [];
  const lists = new NeighbourLists();
  let looked = 0;
  for (let cell = 0; cell < states.length; cell++) {
    if (!grid.land[cell]) continue;
    if (looked++ % CELLS_BETWEEN_PAUSES === 0) await pause();
    const centre = cellCentre(grid, cell);
    const model = await histories.model(centre);
    states[cell] = CELL_OUT_OF_REACH;
    if (!model) continue;
    const site = await histories.site(model, { ...centre, elevationM: null });
    const found = wintersAt(model, site, lower, last, lists);
    if (!found.winters.complete.includes(1)) continue;
    states[cell] = CELL_TOLD;
    cells.push({ cell, ...found });
  }
  return { cells, states };
}

function wintersAt(
  model: PlaceModel,
  site: Site,
  lower: number,
  last: number,
  lists: NeighbourLists,
): Omit<PlaceCell, 'cell'> {
  const on = stationAt(model.network.members, site);
  const neighbours = lists.of(pooledMembers(model, site, on?.id ?? null), model);
  if (on) return { winters: on.winters, error: null, neighbours };
  const separationsKm = model.separations(site);
  const weights = model.weights(separationsKm);
  const { coldest, climates } = coldestByKind(model, site, separationsKm, weights, last);
  const complete = Uint8Array.from(weights, (entry) => (entry ? 1 : 0));
  const kept = coldest.map((byHours) => byHours.map((levels, j) => (j < lower ? NO_LEVELS : levels)));
  return {
    winters: { winter: model.network.labels, complete, reason: [], coldest: kept, coldestDay: [] },
    error: model.errorAt(site, separationsKm, lower, climates[lower], weights),
    neighbours,
  };
}

/** One list for each set of neighbours, in whatever order they lie, so that what is pooled from it can be kept. */
class NeighbourLists {
  readonly #lists = new Map<PlaceModel, Map<string, readonly WinterTable[]>>();

  of(members: readonly number[], model: PlaceModel): readonly WinterTable[] {
    const ofModel = this.#lists.get(model) ?? new Map<string, readonly WinterTable[]>();
    this.#lists.set(model, ofModel);
    const key = [...members].sort((a, b) => a - b).join(' ');
    const list = ofModel.get(key) ?? members.map((member) => model.network.members[member].winters);
    ofModel.set(key, list);
    return list;
  }
}
