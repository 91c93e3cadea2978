import { InputError } from '../../analysis/records/input-error.ts';
import { cellCentre, type PlaceGrid } from '../../analysis/records/grid.ts';
import type { CoastDistance } from '../../analysis/gather/coast-distance.ts';
import { elevationOfCells } from './elevation-cells.ts';
import { openElevation } from './elevation-file.ts';
import { layGrid, type GridLayout } from './grid-layout.ts';

interface Station {
  readonly id: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
}

export interface BuiltGrid {
  readonly grid: PlaceGrid;
  /** Elevations of stations that had none, m, from the file. */
  readonly stationsM: ReadonlyMap<string, number>;
  readonly notes: readonly string[];
}

/**
 * Makes the grid of a pack from its stations, an elevation file and the outlines of the land. In a box without any land in
 * the outlines, land is where the file has elevations.
 * @throws InputError when the file can't be used or holds nothing for these stations
 */
export async function buildGrid(
  stations: readonly Station[],
  file: string,
  coast: CoastDistance,
): Promise<BuiltGrid> {
  const raster = await openElevation(file);
  const layout = layGrid(stations, coast.mask);
  const unknown = stations.filter(({ elevationM }) => elevationM === null);
  const { elevationM: means, placesM } = await elevationOfCells(raster, layout, coast.mask, unknown);
  const outlined = landCells(layout, coast);
  const land = outlined.includes(1) ? outlined : Uint8Array.from(means, (m) => Number(!Number.isNaN(m)));
  const elevationM = withShoreCells(
    layout,
    land,
    means.map((m, i) => (land[i] === 1 ? m : NaN)),
  );
  const coastKm = Float32Array.from(land, (isLand, i) => {
    if (isLand === 0) return 0;
    const km = coast.toShore(cellCentre(layout, i));
    return Number.isFinite(km) ? km : NaN;
  });
  const known = elevationM.filter((m) => !Number.isNaN(m)).length;
  const cells = land.filter((isLand) => isLand === 1).length;
  if (known === 0) {
    throw new InputError(
      `${raster.fileName} has no elevation at any of the ${cells} cells of land around the stations`,
    );
  }
  const stationsM = new Map(
    unknown.flatMap(({ id }, i) => (Number.isNaN(placesM[i]) ? [] : [[id, Math.round(placesM[i])] as const])),
  );
  return {
    grid: { ...layout, elevationM, coastKm, land },
    stationsM,
    notes: [
      ...(known < cells
        ? [
            `${raster.fileName} has no elevation for ${cells - known} of ${cells} cells of land; the grid has none there.`,
          ]
        : []),
      ...(stationsM.size > 0
        ? [`Elevation of ${named(stationsM)} taken from ${raster.fileName}, since no file told it.`]
        : []),
    ],
  };
}

function landCells(layout: GridLayout, { mask }: CoastDistance): Uint8Array {
  const land = new Uint8Array(layout.columns * layout.rows);
  for (let row = 0; row < layout.rows; row++) {
    const isLand = mask.parallel(layout.south + row * layout.stepLatDeg);
    for (let column = 0; column < layout.columns; column++) {
      land[row * layout.columns + column] = Number(isLand(layout.west + column * layout.stepLonDeg));
    }
  }
  return land;
}

/**
 * Cells of land that no pixel with an elevation fell into, mostly at a shore that file and outlines draw differently, get
 * the mean of the cells around them that have one.
 */
function withShoreCells(
  { columns, rows }: GridLayout,
  land: Uint8Array,
  elevationM: Float32Array,
): Float32Array {
  return elevationM.map((m, i) => {
    if (land[i] === 0 || !Number.isNaN(m)) return m;
    const [column, row] = [i % columns, Math.floor(i / columns)];
    let [sum, count] = [0, 0];
    for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++) {
        const near = elevationM[r * columns + c];
        if (Number.isNaN(near)) continue;
        sum += near;
        count++;
      }
    }
    return count > 0 ? sum / count : NaN;
  });
}

function named(stations: ReadonlyMap<string, number>): string {
  const ids = [...stations.keys()];
  const some = ids.slice(0, 5).join(', ') + (ids.length > 5 ? ', …' : '');
  return ids.length === 1 ? `station ${some}` : `${ids.length} stations (${some})`;
}
