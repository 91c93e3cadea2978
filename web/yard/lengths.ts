import { figure, FIXED_SPACE } from '../format/temperatures.ts';

/** Lengths on the plan; everything inside is metres. */
export type LengthUnit = 'm' | 'ft';
export const LENGTH_UNITS = ['m', 'ft'] as const;
/** Where the browser keeps the unit. */
export const LENGTH_KEY = 'citrus-winters-lengths';

const M_PER_FOOT = 0.3048;

/** A length in the shown unit, as a number. */
export function lengthIn(lengthM: number, unit: LengthUnit): number {
  return unit === 'ft' ? lengthM / M_PER_FOOT : lengthM;
}

/** A length written in the shown unit, back to metres. */
export function lengthToM(shown: number, unit: LengthUnit): number {
  return unit === 'ft' ? shown * M_PER_FOOT : shown;
}

/** For an input: tenths, without a zero behind the point. */
export function lengthFigure(lengthM: number, unit: LengthUnit): number {
  return Number(lengthIn(lengthM, unit).toFixed(unit === 'ft' ? 1 : 2));
}

/** `12.5 m`, `41 ft`: tenths of a metre, feet in halves at most. */
export function formatLength(lengthM: number, unit: LengthUnit): string {
  const shown = lengthIn(lengthM, unit);
  const rounded = unit === 'ft' ? Math.round(shown * 2) / 2 : Math.round(shown * 10) / 10;
  return `${figure(rounded, Number.isInteger(rounded) ? 0 : 1)}${FIXED_SPACE}${unit}`;
}

/** Step of the grid that points snap to and arrow keys move by, m: half a metre, or a foot. */
export function gridStepM(unit: LengthUnit): number {
  return unit === 'ft' ? M_PER_FOOT : 0.5;
}

/** A round length that fits in `maxPx`, for the bar of the scale. */
export function planScaleBar(
  pxPerM: number,
  unit: LengthUnit,
  maxPx = 120,
): { readonly px: number; readonly label: string } {
  const pxPerUnit = unit === 'ft' ? pxPerM * M_PER_FOOT : pxPerM;
  const fitting = [200, 100, 50, 20, 10, 5, 2, 1].find((length) => length * pxPerUnit <= maxPx) ?? 1;
  return { px: fitting * pxPerUnit, label: `${fitting}${FIXED_SPACE}${unit}` };
}
