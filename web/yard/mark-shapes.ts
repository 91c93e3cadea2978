import { t } from '../../analysis/language/t.ts';
import { Group } from 'konva/lib/Group.js';
import { Circle } from 'konva/lib/shapes/Circle.js';
import { Line } from 'konva/lib/shapes/Line.js';
import { Rect } from 'konva/lib/shapes/Rect.js';
import { Text } from 'konva/lib/shapes/Text.js';
import { CORNERS_MAX, type PlanPoint, type Yard, type YardThing } from '../../analysis/spot/yard.ts';
import { bearingOf, edgePoint, type BearingOf } from './bearings.ts';
import { cornersOf } from './edit-yard.ts';
import type { PlanPalette } from './plan-palette.ts';
import { MARGIN_PX, toPx, type PlanScale } from './plan-scale.ts';

const QUIET = { preventDefault: false, perfectDrawEnabled: false } as const;
const FONT = '"Source Sans 3 Variable", "Source Sans 3", sans-serif';

/** Squares on the corners of the selected thing, small ones on the middles of an outline's sides. */
export function handleShapes(
  thing: YardThing,
  scale: PlanScale,
  palette: PlanPalette,
  touch: boolean,
): Group {
  const group = new Group();
  const corners = cornersOf(thing);
  const closed = 'outline' in thing;
  const reach = touch ? 30 : 16;
  const handle = (at: PlanPoint, part: 'corner' | 'middle', index: number): void => {
    const [x, y] = toPx(scale, at);
    const size = part === 'corner' ? 9 : 6;
    group.add(
      new Rect({
        ...QUIET,
        name: part,
        id: `${part} ${index} ${thing.id}`,
        x: x - size / 2,
        y: y - size / 2,
        width: size,
        height: size,
        cornerRadius: part === 'middle' ? size / 2 : 0,
        fill: palette.paper,
        stroke: palette.accent,
        strokeWidth: 1.5,
        hitStrokeWidth: reach - size,
      }),
    );
  };
  if (corners.length > 1) {
    // A line is taken by its middle to be moved; its corners are added in the list.
    const sides = closed && corners.length < CORNERS_MAX ? corners.length : 0;
    for (let i = 0; i < sides; i++) {
      const [a, b] = [corners[i], corners[(i + 1) % corners.length]];
      const longPx = Math.hypot(a[0] - b[0], a[1] - b[1]) * scale.pxPerM;
      if (longPx > 44) handle([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], 'middle', i);
    }
    corners.forEach((corner, i) => handle(corner, 'corner', i));
  }
  return group;
}

/** A numbered disc where a tree would stand best. */
export function bestShape(at: PlanPoint, number: number, scale: PlanScale, palette: PlanPalette): Group {
  const [x, y] = toPx(scale, at);
  const group = new Group({ listening: false });
  group.add(
    new Circle({ ...QUIET, x, y, radius: 9, fill: palette.paper, stroke: palette.ink, strokeWidth: 1.3 }),
  );
  group.add(
    new Text({
      ...QUIET,
      x: x - 9,
      y: y - 6.5,
      width: 18,
      align: 'center',
      text: String(number),
      fontFamily: FONT,
      fontSize: 13,
      fontStyle: '600',
      fill: palette.ink,
    }),
  );
  return group;
}

/** A named place for a tree: a small ring and its name. */
export function spotShape(
  spot: { readonly id: string; readonly name: string; readonly at: PlanPoint },
  chosen: boolean,
  scale: PlanScale,
  palette: PlanPalette,
): Group {
  const [x, y] = toPx(scale, spot.at);
  const group = new Group({ id: spot.id, name: 'spot' });
  const colour = chosen ? palette.accent : palette.ink;
  group.add(
    new Circle({
      ...QUIET,
      x,
      y,
      radius: 5,
      fill: palette.paper,
      stroke: colour,
      strokeWidth: 2,
      hitStrokeWidth: 16,
    }),
  );
  group.add(
    new Text({
      ...QUIET,
      x: x + 9,
      y: y - 7,
      text: spot.name,
      fontFamily: FONT,
      fontSize: 13,
      fill: palette.ink,
      stroke: palette.paper,
      strokeWidth: 3,
      fillAfterStrokeEnabled: true,
      listening: false,
    }),
  );
  return group;
}

/** The spot the answer is for: a filled disc in a ring of the accent. */
export function chosenShape(at: PlanPoint, scale: PlanScale, palette: PlanPalette): Group {
  const [x, y] = toPx(scale, at);
  const group = new Group({ listening: false });
  group.add(new Circle({ ...QUIET, x, y, radius: 11, stroke: palette.paper, strokeWidth: 5 }));
  group.add(new Circle({ ...QUIET, x, y, radius: 11, stroke: palette.accent, strokeWidth: 2.5 }));
  group.add(new Circle({ ...QUIET, x, y, radius: 4, fill: palette.accent }));
  return group;
}

/** The cross-hair of the point being read. */
export function cursorShape(at: PlanPoint, scale: PlanScale, palette: PlanPalette): Group {
  const [x, y] = toPx(scale, at);
  const group = new Group({ listening: false });
  for (const [stroke, strokeWidth] of [
    [palette.paper, 4],
    [palette.ink, 1.4],
  ] as const) {
    for (const points of [
      [x - 10, y, x - 3, y],
      [x + 3, y, x + 10, y],
      [x, y - 10, x, y - 3],
      [x, y + 3, x, y + 10],
    ])
      group.add(new Line({ ...QUIET, points, stroke, strokeWidth }));
  }
  return group;
}

const WORDS: Readonly<Record<BearingOf, string>> = {
  wind: t`cold wind`,
  slope: t`downhill`,
  water: t`water`,
};

const BEARINGS = ['wind', 'water', 'slope'] as const;
/** Arrows nearer to each other than this stand side by side, degrees; and how far apart then, px. */
const CLOSE_DEG = 35;
const ASIDE_PX = 78;

/** How far an arrow stands aside for those that come before it, px. */
function asidePx(yard: Yard, of: BearingOf, deg: number): number {
  const before = BEARINGS.slice(0, BEARINGS.indexOf(of)).filter((other) => {
    const otherDeg = bearingOf(yard, other);
    return otherDeg !== null && Math.abs(((deg - otherDeg + 540) % 360) - 180) < CLOSE_DEG;
  });
  return before.length * ASIDE_PX;
}

/** An arrow in the margin with its word: the wind blows in, the slope falls outwards, water lies that way. */
export function bearingShape(
  yard: Yard,
  of: BearingOf,
  scale: PlanScale,
  palette: PlanPalette,
): Group | null {
  const deg = bearingOf(yard, of);
  if (deg === null) return null;
  const [edgeX, edgeY] = toPx(scale, edgePoint(yard, deg));
  const turn = (deg * Math.PI) / 180;
  const [outX, outY] = [Math.sin(turn), -Math.cos(turn)];
  const out = { wind: MARGIN_PX * 0.62, slope: MARGIN_PX * 0.46, water: MARGIN_PX * 0.54 }[of];
  const aside = asidePx(yard, of, deg);
  const alongTop = Math.abs(outX) <= 0.7;
  const x = edgeX + outX * out + (alongTop ? aside : 0);
  const y = edgeY + outY * out + (alongTop ? 0 : aside);
  const group = new Group({ name: 'bearing', id: `bearing ${of}` });
  const colour = of === 'water' ? palette.water : palette.ink;
  const angle = deg + (of === 'wind' ? 180 : 0);
  group.add(
    new Circle({ ...QUIET, x, y, radius: 13, fill: palette.paper, opacity: 0.001, hitStrokeWidth: 12 }),
  );
  group.add(
    new Line({
      ...QUIET,
      x,
      y,
      rotation: angle,
      points: of === 'wind' ? [0, 13, 0, -10] : [0, 10, 0, -10],
      stroke: colour,
      strokeWidth: of === 'slope' ? 1.2 : 2,
      hitStrokeWidth: 22,
    }),
  );
  group.add(
    new Line({
      ...QUIET,
      x,
      y,
      rotation: angle,
      points: [-5, -6, 0, -13, 5, -6],
      stroke: colour,
      strokeWidth: 2,
    }),
  );
  group.add(
    new Text({
      ...QUIET,
      x: alongTop ? x + 9 : x - 30,
      y: alongTop ? y - 7 : y + 14,
      width: alongTop ? undefined : 60,
      align: alongTop ? 'left' : 'center',
      text: WORDS[of],
      fontFamily: FONT,
      fontSize: 12,
      fill: palette.inkSoft,
      listening: false,
    }),
  );
  return group;
}
