import { Group } from 'konva/lib/Group.js';
import { Circle } from 'konva/lib/shapes/Circle.js';
import { Line } from 'konva/lib/shapes/Line.js';
import type { PlanPoint, YardThing } from '../../analysis/spot/yard.ts';
import { cornersOf } from './edit-yard.ts';
import type { PatternBook, PatternName } from './patterns.ts';
import type { PlanPalette } from './plan-palette.ts';
import { toPx, type PlanScale } from './plan-scale.ts';

/** What the drawing of a thing depends on besides the thing. */
export interface DrawnWith {
  readonly scale: PlanScale;
  readonly palette: PlanPalette;
  readonly patterns: PatternBook;
}

/** How a thing stands out. */
export type Standing = 'plain' | 'selected' | 'wrong';

const flat = (scale: PlanScale, corners: readonly PlanPoint[]): number[] =>
  corners.flatMap((corner) => toPx(scale, corner));

/** Settings that all shapes share: touches stay with the page unless the plan takes them. */
const QUIET = { preventDefault: false, perfectDrawEnabled: false, shadowForStrokeEnabled: false } as const;

/** Order of drawing: ground first, then what stands on it, then what stands overhead. */
const LAYER_ORDER: Readonly<Record<YardThing['kind'], number>> = {
  hollow: 0,
  rise: 0,
  ground: 1,
  paving: 2,
  water: 3,
  building: 4,
  windbreak: 5,
  wall: 6,
  canopy: 7,
};

/** Things from the lowest to the highest. */
export function inDrawingOrder(things: readonly YardThing[]): readonly YardThing[] {
  return [...things].sort((a, b) => LAYER_ORDER[a.kind] - LAYER_ORDER[b.kind]);
}

function outlinePattern(thing: YardThing): PatternName | null {
  switch (thing.kind) {
    case 'building':
      return thing.heated ? 'hatch' : null;
    case 'paving':
      return 'paving';
    case 'water':
      return 'water';
    case 'canopy':
      return 'leaves';
    case 'ground':
      return thing.cover;
    default:
      return null;
  }
}

/** The shapes of one thing; its id is the group's, so that a hit can be told. */
export function thingShapes(
  thing: YardThing,
  standing: Standing,
  { scale, palette, patterns }: DrawnWith,
): Group {
  const group = new Group({ id: thing.id, name: 'thing' });
  const ink = standing === 'wrong' ? palette.warn : standing === 'selected' ? palette.accent : palette.ink;
  const points = flat(scale, cornersOf(thing));
  const bold = standing === 'plain' ? 1 : 1.6;
  if ('outline' in thing) {
    const solid = thing.kind === 'building';
    const pattern = outlinePattern(thing);
    const edge = {
      ...QUIET,
      points,
      closed: true,
      tension: thing.kind === 'water' || (thing.kind === 'canopy' && thing.outline.length > 6) ? 0.4 : 0,
      lineJoin: 'miter',
    } as const;
    if (solid) group.add(new Line({ ...edge, fill: palette.paper }));
    group.add(
      new Line({
        ...edge,
        ...(pattern
          ? {
              fillPatternImage: patterns.tile(
                pattern,
                thing.kind === 'water' ? palette.water : palette.inkSoft,
              ) as unknown as HTMLImageElement,
              fillPatternScale: { x: 0.5, y: 0.5 },
              fillPriority: 'pattern',
            }
          : { fill: 'rgba(0,0,0,0.001)' }),
        stroke: thing.kind === 'water' && standing === 'plain' ? palette.water : ink,
        strokeWidth: (solid ? 1.6 : 0.9) * bold,
        dash: thing.kind === 'canopy' ? [5, 3] : thing.kind === 'ground' ? [1.5, 3] : undefined,
        hitStrokeWidth: 12,
      }),
    );
    return group;
  }
  if ('line' in thing) {
    const line = {
      ...QUIET,
      points,
      stroke: ink,
      hitStrokeWidth: 18,
      lineCap: 'butt',
      lineJoin: 'miter',
    } as const;
    if (thing.kind === 'windbreak') {
      group.add(new Line({ ...line, strokeWidth: 10, opacity: 0.25, lineCap: 'round', lineJoin: 'round' }));
      group.add(new Line({ ...line, strokeWidth: 8, dash: [0.01, 9], lineCap: 'round', lineJoin: 'round' }));
    } else if (thing.masonry) {
      group.add(new Line({ ...line, strokeWidth: 4.5 * bold, dash: thing.open ? [8, 4] : undefined }));
    } else {
      group.add(new Line({ ...line, strokeWidth: 1.4 * bold }));
      group.add(new Line({ ...line, strokeWidth: 7, dash: thing.open ? [1.4, 7] : [1.4, 3.5] }));
    }
    return group;
  }
  const [x, y] = toPx(scale, thing.at);
  const radius = thing.radiusM * scale.pxPerM;
  const circle = { ...QUIET, x, y, stroke: ink } as const;
  group.add(
    new Circle({
      ...circle,
      radius,
      strokeWidth: 1 * bold,
      dash: [2, 4],
      fill: 'rgba(0,0,0,0.001)',
      hitStrokeWidth: 12,
    }),
  );
  group.add(
    new Circle({ ...circle, radius: radius * 0.66, strokeWidth: 0.8, dash: [2, 4], listening: false }),
  );
  group.add(
    new Circle({ ...circle, radius: radius * 0.33, strokeWidth: 0.8, dash: [2, 4], listening: false }),
  );
  group.add(
    new Line({
      ...QUIET,
      points:
        thing.kind === 'rise'
          ? [x, y - 5, x + 5, y + 4, x - 5, y + 4]
          : [x, y + 5, x + 5, y - 4, x - 5, y - 4],
      closed: true,
      fill: ink,
    }),
  );
  return group;
}
