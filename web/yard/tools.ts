import { t } from '../../analysis/language/t.ts';
import type { PlanPoint, Yard, YardThing } from '../../analysis/spot/yard.ts';
import { freshId, onPlot } from './edit-yard.ts';
import { toGrain } from './snapping.ts';

/** How a tool is drawn: a rectangle, a round outline or a line by dragging, a circle from its middle. */
type Drawing = 'rectangle' | 'round' | 'line' | 'circle';

/** One thing that can be drawn. */
export interface Tool {
  readonly id: ToolId;
  readonly label: string;
  readonly drawing: Drawing;
  /** East and north extent of one put in without drawing, m; a line's length and 0, a circle's radius. */
  readonly size: PlanPoint;
  readonly make: (id: string, corners: readonly PlanPoint[], radiusM: number) => YardThing;
}

export type ToolId =
  | 'house'
  | 'shed'
  | 'wall'
  | 'fence'
  | 'windbreak'
  | 'canopy'
  | 'paving'
  | 'water'
  | 'ground'
  | 'hollow'
  | 'rise';

export const TOOLS: readonly Tool[] = [
  {
    id: 'house',
    label: t`Heated building`,
    drawing: 'rectangle',
    size: [12, 8],
    make: (id, outline) => ({ id, kind: 'building', outline, heightM: 5, heated: true, masonry: true }),
  },
  {
    id: 'shed',
    label: t`Unheated building`,
    drawing: 'rectangle',
    size: [4, 3],
    make: (id, outline) => ({ id, kind: 'building', outline, heightM: 2.5, heated: false, masonry: false }),
  },
  {
    id: 'wall',
    label: t`Masonry wall`,
    drawing: 'line',
    size: [8, 0],
    make: (id, line) => ({ id, kind: 'wall', line, heightM: 2, masonry: true, open: false }),
  },
  {
    id: 'fence',
    label: t`Fence`,
    drawing: 'line',
    size: [8, 0],
    make: (id, line) => ({ id, kind: 'wall', line, heightM: 1.8, masonry: false, open: true }),
  },
  {
    id: 'windbreak',
    label: t`Windbreak`,
    drawing: 'line',
    size: [10, 0],
    make: (id, line) => ({ id, kind: 'windbreak', line, heightM: 4 }),
  },
  {
    id: 'canopy',
    label: t`Evergreen canopy`,
    drawing: 'round',
    size: [6, 6],
    make: (id, outline) => ({ id, kind: 'canopy', outline, baseM: 3, heightM: 8, density: 0.7 }),
  },
  {
    id: 'paving',
    label: t`Paving`,
    drawing: 'rectangle',
    size: [6, 4],
    make: (id, outline) => ({ id, kind: 'paving', outline }),
  },
  {
    id: 'water',
    label: t`Pond or pool`,
    drawing: 'round',
    size: [6, 4],
    make: (id, outline) => ({ id, kind: 'water', outline }),
  },
  {
    id: 'ground',
    label: t`Bare, mulched, tall grass`,
    drawing: 'rectangle',
    size: [5, 4],
    make: (id, outline) => ({ id, kind: 'ground', outline, cover: 'bare' }),
  },
  {
    id: 'hollow',
    label: t`Hollow`,
    drawing: 'circle',
    size: [6, 6],
    make: (id, [at], radiusM) => ({ id, kind: 'hollow', at, byM: 1, radiusM }),
  },
  {
    id: 'rise',
    label: t`High point`,
    drawing: 'circle',
    size: [6, 6],
    make: (id, [at], radiusM) => ({ id, kind: 'rise', at, byM: 1, radiusM }),
  },
];

export function findTool(id: ToolId): Tool {
  return TOOLS.find((tool) => tool.id === id)!;
}

/** Kinds in ids: what a file shows, so the thing's own kind. */
function idFor(tool: Tool, yard: Yard): string {
  return freshId(yard, tool.make('', [[0, 0]], 1).kind);
}

const ROUND_CORNERS = 12;
const SMALLEST_RADIUS_M = 0.5;

/** Corners that dragging from one point to another draws. */
export function draggedCorners({ drawing }: Tool, from: PlanPoint, to: PlanPoint): readonly PlanPoint[] {
  if (drawing === 'line') return [from, to];
  if (drawing === 'circle') return [from];
  if (drawing === 'rectangle') return [from, [to[0], from[1]], to, [from[0], to[1]]];
  const middle: PlanPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [across, up] = [Math.abs(to[0] - from[0]) / 2, Math.abs(to[1] - from[1]) / 2];
  return Array.from({ length: ROUND_CORNERS }, (_, i): PlanPoint => {
    const turn = ((i + 0.5) * 2 * Math.PI) / ROUND_CORNERS;
    return [toGrain(middle[0] + across * Math.cos(turn)), toGrain(middle[1] + up * Math.sin(turn))];
  });
}

/** The thing that dragging draws. */
export function draggedThing(tool: Tool, yard: Yard, from: PlanPoint, to: PlanPoint): YardThing {
  const radiusM = Math.max(SMALLEST_RADIUS_M, toGrain(Math.hypot(to[0] - from[0], to[1] - from[1])));
  return tool.make(idFor(tool, yard), draggedCorners(tool, from, to), radiusM);
}

/** The thing with corners set one by one. */
export function corneredThing(tool: Tool, yard: Yard, corners: readonly PlanPoint[]): YardThing {
  return tool.make(idFor(tool, yard), corners, tool.size[0]);
}

/** The thing in its usual size, its middle at a point. */
export function usualThing(tool: Tool, yard: Yard, [east, north]: PlanPoint): YardThing {
  if (tool.drawing === 'circle') return tool.make(idFor(tool, yard), [[east, north]], tool.size[0]);
  const [across, up] = [
    Math.min(tool.size[0], yard.widthM * 0.8) / 2,
    Math.min(tool.size[1], yard.depthM * 0.8) / 2,
  ].map((half) => Math.round(half * 2) / 2);
  const middle = onPlot([east, north], yard);
  const corners = draggedCorners(
    tool,
    [middle[0] - across, middle[1] - up],
    [middle[0] + across, middle[1] + up],
  );
  return tool.make(idFor(tool, yard), corners, tool.size[0]);
}
