import type { PlanPoint } from '../../analysis/spot/yard.ts';

export interface Snapping {
  readonly on: boolean;
  readonly gridM: number;
  /** Corners of other things within this distance draw a point to them, m. */
  readonly cornerM: number;
}

/** What a point being set may line up with. */
export interface SnapTargets {
  readonly corners?: readonly PlanPoint[];
  /** The corners before and after, in whose sight right angles are kept. */
  readonly neighbours?: readonly PlanPoint[];
}

/** A line this close to north-south or east-west is meant to be so, as a share of its length. */
const NEARLY_SQUARE = 0.1;

/** To 5 cm: what a yard's text keeps, so that nothing moves when an address is opened again. */
export function toGrain(metres: number): number {
  return Math.round(metres * 20) / 20;
}

function distance(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** Where a point goes: to a corner near by, else square to its neighbours, else to the grid. */
export function snapPoint(at: PlanPoint, snapping: Snapping, targets: SnapTargets = {}): PlanPoint {
  if (!snapping.on) return [toGrain(at[0]), toGrain(at[1])];
  const near = (targets.corners ?? [])
    .filter((corner) => distance(corner, at) <= snapping.cornerM)
    .sort((a, b) => distance(a, at) - distance(b, at));
  if (near.length > 0) return near[0];
  const toGrid = (metres: number): number => toGrain(Math.round(metres / snapping.gridM) * snapping.gridM);
  let [east, north] = [toGrid(at[0]), toGrid(at[1])];
  for (const neighbour of targets.neighbours ?? []) {
    const [acrossM, upM] = [Math.abs(at[0] - neighbour[0]), Math.abs(at[1] - neighbour[1])];
    if (acrossM <= upM * NEARLY_SQUARE) east = neighbour[0];
    else if (upM <= acrossM * NEARLY_SQUARE) north = neighbour[1];
  }
  return [east, north];
}

/** How far a thing moves, so that one corner of it comes to lie on the grid. */
export function snapMove(corner: PlanPoint, byM: PlanPoint, snapping: Snapping): PlanPoint {
  const goal = snapPoint([corner[0] + byM[0], corner[1] + byM[1]], { ...snapping, cornerM: -1 });
  return [goal[0] - corner[0], goal[1] - corner[1]];
}
