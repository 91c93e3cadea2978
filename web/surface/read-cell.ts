import { t } from '../../analysis/language/t.ts';
import { nearestStations } from '../../analysis/place/nearest-stations.ts';
import { cellAt, cellCentre } from '../../analysis/records/grid.ts';
import { formatDistance } from '../format/numbers.ts';
import { formatPeriod, formatPeriodFigure } from '../format/periods.ts';
import type { TemperatureUnit } from '../format/unit.ts';
import type { Surface } from '../state/ports.ts';
import {
  BEYOND,
  classIndex,
  NO_ANSWER,
  PERIOD_SCALE,
  RATIO_SCALE,
  WHERE_SCALE,
  type PaintClass,
} from './paint-classes.ts';
import { periodRatio, reaches, type SurfaceView } from './surface-view.ts';
import { tellingCells } from './telling-cells.ts';

/** A station as the readout needs it. */
export interface ReadStation {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly winters: { readonly complete: number };
}

/** What the two surfaces of a difference are called: `Meyer lemon`, `last 30 winters`. */
export interface SurfaceNames {
  /** What is held against what, after the name of the first type: `against Yuzu`. */
  readonly against: string;
  readonly first: string;
  readonly second: string;
}

/** What the map says of a point. */
export interface CellReading {
  readonly paintClass: PaintClass;
  /** One line or two: the answer. */
  readonly lines: readonly string[];
  /** Where it comes from. */
  readonly source: string;
}

/** Stations with fewer complete winters take no part in estimates. */
const FEWEST_WINTERS = 10;
const SEARCH_KM = 20_000;

/** A point of the map in words; `null` on the sea and off the cells. */
export function readCell(
  view: SurfaceView,
  names: SurfaceNames,
  point: { readonly lat: number; readonly lon: number },
  stations: readonly ReadStation[],
  unit: TemperatureUnit,
): CellReading | null {
  const at = cellAt(view.surface, point.lat, point.lon);
  const cell = at === null ? -1 : tellingCells(view.surface).telling[at];
  if (cell === -1) return null;
  const able = stations.filter(({ winters }) => winters.complete >= FEWEST_WINTERS);
  const [nearest] = nearestStations(able.length > 0 ? able : stations, point, 1, SEARCH_KM);
  const away = nearest ? formatDistance(nearest.distanceKm, unit) : '';
  const paintClass = classOf(view, cell);
  if (paintClass.id === 'nodata') {
    return able.length > 0
      ? {
          paintClass,
          lines: [t`no answer: ${away} from the nearest long record`],
          source: nearest.station.name,
        }
      : { paintClass, lines: [t`no answer: no station has a long record`], source: '' };
  }
  return {
    paintClass,
    lines: linesOf(view, names, cell, paintClass),
    source: nearest ? t`estimated; nearest station ${nearest.station.name}, ${away}` : t`estimated`,
  };
}

/** The class a cell is painted in. */
export function classOf(view: SurfaceView, cell: number): PaintClass {
  const { surface } = view;
  const missing = ({ states, periods }: Surface): boolean =>
    states[cell] !== 1 || Number.isNaN(periods[cell]);
  if (missing(surface) || (view.mode === 'difference' && missing(view.against))) return NO_ANSWER;
  if (view.mode === 'periods') {
    const period = surface.periods[cell];
    if (period > surface.longestClaims[cell]) return BEYOND.periods;
    return PERIOD_SCALE.classes[classIndex(PERIOD_SCALE, period)];
  }
  if (view.mode === 'where') {
    const reached = reaches(surface, cell, view.atLeastWinters);
    return reached === null ? BEYOND.where : WHERE_SCALE.classes[reached ? 1 : 0];
  }
  const ratio = periodRatio(surface, view.against, cell);
  return ratio === null ? BEYOND.difference : RATIO_SCALE.classes[classIndex(RATIO_SCALE, ratio)];
}

/** A cell's period in words, never beyond what its winters can tell. */
function periodWords({ periods, longestClaims }: Surface, cell: number): string {
  const [period, claim] = [periods[cell], longestClaims[cell]];
  return period > claim ? t`rarer than about 1 winter in ${formatPeriodFigure(claim)}` : formatPeriod(period);
}

function linesOf(
  view: SurfaceView,
  names: SurfaceNames,
  cell: number,
  { label }: PaintClass,
): readonly string[] {
  const first = periodWords(view.surface, cell);
  if (view.mode === 'periods') return [first];
  if (view.mode === 'where') return [first, label];
  return [`${names.first}: ${first}`, `${names.second}: ${periodWords(view.against, cell)}`];
}

/** Centre of the cell a point lies in, or of the neighbour so many columns and rows on, kept on the grid. */
export function cellBeside(
  surface: Surface,
  point: { readonly lat: number; readonly lon: number },
  columns: number,
  rows: number,
): { lat: number; lon: number } {
  const clamp = (value: number, most: number): number => Math.max(0, Math.min(most, value));
  const column = clamp(
    Math.round((point.lon - surface.west) / surface.stepLonDeg) + columns,
    surface.columns - 1,
  );
  const row = clamp(Math.round((point.lat - surface.south) / surface.stepLatDeg) + rows, surface.rows - 1);
  return cellCentre(surface, row * surface.columns + column);
}
