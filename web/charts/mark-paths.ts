/** Outlines of marks, one for each class of return period and two for "not seen" and "no data". */
export type MarkShape = 'circle' | 'square' | 'diamond' | 'triangle' | 'star4' | 'star6' | 'ring' | 'hatched';

type Point = readonly [x: number, y: number];

/** Radii relative to the circle, chosen by eye so that all marks look equally heavy, spikes a little larger. */
const RADIUS: Record<MarkShape, number> = {
  circle: 0.82,
  square: 1.08,
  diamond: 1.12,
  triangle: 1.18,
  star4: 1.38,
  star6: 1.4,
  ring: 0.82,
  hatched: 1.08,
};

/** How far the notches of a star go in, as a share of its radius. */
const NOTCH = { star4: 0.42, star6: 0.5 };

function ngon(corners: number, radius: number, turn: number, notch = 1): Point[] {
  return Array.from({ length: corners }, (_, i) => {
    const angle = turn + (2 * Math.PI * i) / corners;
    const r = i % 2 === 1 ? radius * notch : radius;
    return [r * Math.sin(angle), -r * Math.cos(angle)];
  });
}

/** Corners of a shape around (0, 0) for a mark of nominal radius `radius`; empty for the round ones. */
export function markCorners(shape: MarkShape, radius: number): readonly Point[] {
  const r = RADIUS[shape] * radius;
  switch (shape) {
    case 'square':
    case 'hatched':
      return ngon(4, r, Math.PI / 4);
    case 'diamond':
      return ngon(4, r, 0);
    case 'triangle':
      return ngon(3, r, Math.PI);
    case 'star4':
      return ngon(8, r, 0, NOTCH.star4);
    case 'star6':
      return ngon(12, r, 0, NOTCH.star6);
    default:
      return [];
  }
}

/** SVG path of a mark around (0, 0). */
export function markPath(shape: MarkShape, radius: number): string {
  const corners = markCorners(shape, radius);
  const at = (value: number): string => value.toFixed(2);
  if (corners.length === 0) {
    const r = at(RADIUS[shape] * radius);
    return `M-${r},0a${r},${r} 0 1,0 ${at(2 * Number(r))},0a${r},${r} 0 1,0 -${at(2 * Number(r))},0Z`;
  }
  return `M${corners.map(([x, y]) => `${at(x)},${at(y)}`).join('L')}Z`;
}
