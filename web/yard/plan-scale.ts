import type { PlanPoint } from '../../analysis/spot/yard.ts';

/** Room around the plot for arrows and names, px. */
export const MARGIN_PX = 38;

/** Where the plot lies on the sheet, north up. */
export interface PlanScale {
  readonly pxPerM: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly leftPx: number;
  readonly bottomPx: number;
}

/** Fits a plot into a width, and a height if it is given. */
export function planScale(widthM: number, depthM: number, widthPx: number, mostHeightPx: number): PlanScale {
  const pxPerM = Math.max(
    0.5,
    Math.min((widthPx - 2 * MARGIN_PX) / widthM, (mostHeightPx - 2 * MARGIN_PX) / depthM),
  );
  const heightPx = Math.round(depthM * pxPerM + 2 * MARGIN_PX);
  return {
    pxPerM,
    widthPx,
    heightPx,
    leftPx: Math.round((widthPx - widthM * pxPerM) / 2),
    bottomPx: heightPx - MARGIN_PX,
  };
}

export function toPx({ pxPerM, leftPx, bottomPx }: PlanScale, [east, north]: PlanPoint): [number, number] {
  return [leftPx + east * pxPerM, bottomPx - north * pxPerM];
}

export function toPlan({ pxPerM, leftPx, bottomPx }: PlanScale, x: number, y: number): PlanPoint {
  return [(x - leftPx) / pxPerM, (bottomPx - y) / pxPerM];
}
