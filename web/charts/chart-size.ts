/** Width used before the container has been measured, px (also on paper made without a screen). */
export const UNMEASURED_WIDTH = 640;

/** How many labels of `labelWidth` px fit on an axis of `length` px, at least two. */
export function labelCount(length: number, labelWidth: number): number {
  return Math.max(2, Math.floor(length / labelWidth));
}

/**
 * Winters to label on an axis: round years (ends in 0, or 5 when there is room) no closer than `minGap` px.
 * `pxPerWinter` > 0.
 */
export function winterLabels(first: number, last: number, pxPerWinter: number, minGap = 40): number[] {
  const step = [1, 2, 5, 10, 20, 50, 100].find((candidate) => candidate * pxPerWinter >= minGap) ?? 100;
  const start = Math.ceil(first / step) * step;
  const labels: number[] = [];
  for (let winter = start; winter <= last; winter += step) labels.push(winter);
  return labels;
}
