import booleanPointInPolygon from '@turf/boolean-point-in-polygon';
import { quantileSorted } from 'd3-array';
import type { Corner } from '../../state/chosen.ts';
import type { Surface } from '../../state/ports.ts';

/** A period of one cell or of a share of them; `beyond`: rarer than this, which is the longest that is told. */
export interface ToldPeriod {
  readonly winters: number;
  readonly beyond: boolean;
}

/** How often cold strikes over an area, told by the cells of the surface whose middle lies inside. */
export interface AreaSummary {
  /** Cells of land inside. */
  readonly cells: number;
  /** Share of them without an answer, 0-1. */
  readonly unanswered: number;
  /** The area is smaller than a cell: this is the one it lies in. */
  readonly oneCell: boolean;
  /** A tenth of the cells is hit as often or oftener; half are; a tenth is hit as rarely or more rarely. `null`: no answer. */
  readonly coldestTenth: ToldPeriod | null;
  readonly middle: ToldPeriod | null;
  readonly mildestTenth: ToldPeriod | null;
  /** Middle of the cell of the mildest tenth that lies nearest to the middle of the area. */
  readonly spot: (Corner & { readonly period: ToldPeriod }) | null;
}

interface Cell extends Corner {
  readonly state: number;
  readonly told: ToldPeriod | null;
}

const SEA = 0;

/** Spread of a surface over an area. Corners in order, at least three; the last is joined to the first. */
export function areaSummary(surface: Surface, corners: readonly Corner[]): AreaSummary {
  const inside = landInside(surface, corners);
  const cells = inside.length > 0 ? inside : cellUnder(surface, corners);
  const answered = cells.filter((cell) => cell.told !== null);
  const sorted = answered.map(({ told }) => told!.winters).sort((a, b) => a - b);
  const claim = Math.max(0, ...answered.map(({ told }) => (told!.beyond ? told!.winters : 0)));
  const at = (share: number): ToldPeriod | null => {
    const winters = quantileSorted(sorted, share);
    return winters === undefined ? null : { winters, beyond: claim > 0 && winters >= claim };
  };
  const mildestTenth = at(0.9);
  return {
    cells: cells.length,
    unanswered: cells.length === 0 ? 0 : 1 - answered.length / cells.length,
    oneCell: inside.length === 0 && cells.length > 0,
    coldestTenth: at(0.1),
    middle: at(0.5),
    mildestTenth,
    spot: mildestTenth && nearestToMiddle(cells, answered, mildestTenth.winters),
  };
}

/** What a cell tells: its period, but no longer than is claimed. */
function toldOf({ periods, longestClaims, states }: Surface, cell: number): ToldPeriod | null {
  const period = periods[cell];
  if (states[cell] !== 1 || Number.isNaN(period)) return null;
  const claim = longestClaims[cell];
  return period > claim ? { winters: claim, beyond: true } : { winters: period, beyond: false };
}

function landInside(surface: Surface, corners: readonly Corner[]): Cell[] {
  const ring = [...corners, corners[0]].map(({ lat, lon }) => [lon, lat]);
  const polygon = { type: 'Polygon' as const, coordinates: [ring] };
  const [south, north] = [
    Math.min(...corners.map(({ lat }) => lat)),
    Math.max(...corners.map(({ lat }) => lat)),
  ];
  const cells: Cell[] = [];
  for (let row = 0; row < surface.rows; row++) {
    const lat = surface.south + row * surface.stepLatDeg;
    if (lat < south || lat > north) continue;
    for (let column = 0; column < surface.columns; column++) {
      const cell = row * surface.columns + column;
      if (surface.states[cell] === SEA) continue;
      const lon = nearTurn(surface.west + column * surface.stepLonDeg, corners[0].lon);
      if (!booleanPointInPolygon([lon, lat], polygon)) continue;
      cells.push({ lat, lon, state: surface.states[cell], told: toldOf(surface, cell) });
    }
  }
  return cells;
}

/** The land cell in which the middle of a small area lies. */
function cellUnder(surface: Surface, corners: readonly Corner[]): Cell[] {
  const middle = middleOf(corners);
  const row = Math.round((middle.lat - surface.south) / surface.stepLatDeg);
  const column = Math.round((nearTurn(middle.lon, surface.west + 180) - surface.west) / surface.stepLonDeg);
  if (row < 0 || row >= surface.rows || column < 0 || column >= surface.columns) return [];
  const cell = row * surface.columns + column;
  if (surface.states[cell] === SEA) return [];
  return [{ ...middle, state: surface.states[cell], told: toldOf(surface, cell) }];
}

/** The same longitude, a whole turn on or back, within 180 degrees of another. */
function nearTurn(lon: number, near: number): number {
  return lon + 360 * Math.round((near - lon) / 360);
}

function middleOf(points: readonly Corner[]): Corner {
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  return { lat: mean(points.map(({ lat }) => lat)), lon: mean(points.map(({ lon }) => lon)) };
}

function nearestToMiddle(
  cells: readonly Cell[],
  answered: readonly Cell[],
  fromWinters: number,
): AreaSummary['spot'] {
  const middle = middleOf(cells);
  const squeeze = Math.cos((middle.lat * Math.PI) / 180);
  const away = ({ lat, lon }: Corner): number => Math.hypot(lat - middle.lat, (lon - middle.lon) * squeeze);
  const mild = answered.filter(({ told }) => told!.winters >= fromWinters);
  const best = mild.reduce<Cell | null>(
    (found, cell) => (found && away(found) <= away(cell) ? found : cell),
    null,
  );
  return best && { lat: best.lat, lon: nearTurn(best.lon, 0), period: best.told! };
}
