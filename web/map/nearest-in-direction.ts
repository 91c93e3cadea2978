/** A thing with a place on the screen, px, y downwards. */
export interface ScreenPoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

export type ArrowKey = 'ArrowUp' | 'ArrowDown' | 'ArrowLeft' | 'ArrowRight';

const HEADINGS: Record<ArrowKey, readonly [x: number, y: number]> = {
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

export function isArrowKey(key: string): key is ArrowKey {
  return key in HEADINGS;
}

/** How much a step aside costs against a step ahead: the cursor keeps its line but never gets stuck. */
const ASIDE_WEIGHT = 2.2;

/** Widest angle off the arrow's heading that still counts as "that way": a little over 60 degrees. */
const MIN_AHEAD_SHARE = 0.45;

/**
 * The point to which an arrow key moves from `from`: the nearest in that direction, points aside counted as farther.
 * `null` when nothing lies that way.
 */
export function nearestInDirection<P extends ScreenPoint>(
  points: readonly P[],
  from: { readonly x: number; readonly y: number; readonly id?: string },
  key: ArrowKey,
): P | null {
  const [hx, hy] = HEADINGS[key];
  let best: P | null = null;
  let bestCost = Infinity;
  for (const point of points) {
    if (point.id === from.id) continue;
    const [dx, dy] = [point.x - from.x, point.y - from.y];
    const ahead = dx * hx + dy * hy;
    const aside = Math.abs(dx * hy - dy * hx);
    if (ahead <= 0 || ahead < MIN_AHEAD_SHARE * Math.hypot(dx, dy)) continue;
    const cost = ahead + ASIDE_WEIGHT * aside;
    if (cost < bestCost) [best, bestCost] = [point, cost];
  }
  return best;
}

/** The point nearest to a place on the screen, `null` for none within `withinPx`. */
export function nearestPoint<P extends ScreenPoint>(
  points: readonly P[],
  to: { readonly x: number; readonly y: number },
  withinPx = Infinity,
): P | null {
  let best: P | null = null;
  let bestPx = withinPx;
  for (const point of points) {
    const px = Math.hypot(point.x - to.x, point.y - to.y);
    if (px <= bestPx) [best, bestPx] = [point, px];
  }
  return best;
}
