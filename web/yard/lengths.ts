import { sayFigureText } from '../../analysis/language/figures.ts';
import { t } from '../../analysis/language/t.ts';
import { M_PER_FOOT } from '../format/numbers.ts';
import { figure, FIXED_SPACE } from '../format/temperatures.ts';

/** Lengths on the plan; everything inside is metres. */
export type LengthUnit = 'm' | 'ft';
export const LENGTH_UNITS = ['m', 'ft'] as const;
/** Where the browser keeps the unit. */
export const LENGTH_KEY = 'citrus-winters-lengths';

/** A length in the shown unit, as a number. */
function lengthIn(lengthM: number, unit: LengthUnit): number {
  return unit === 'ft' ? lengthM / M_PER_FOOT : lengthM;
}

/** A length written in the shown unit, back to metres. */
export function lengthToM(shown: number, unit: LengthUnit): number {
  return unit === 'ft' ? shown * M_PER_FOOT : shown;
}

/** Feet this near to a whole one are meant to be whole: yards keep steps of 5 cm, which is coarser than a tenth of a foot. */
const NEARLY_WHOLE_FT = 0.09;

/** For an input: tenths of a foot or centimetres, without a zero behind the point. */
export function lengthFigure(lengthM: number, unit: LengthUnit): number {
  const shown = lengthIn(lengthM, unit);
  const whole = Math.round(shown);
  if (unit === 'ft' && Math.abs(shown - whole) <= NEARLY_WHOLE_FT) return whole;
  return Number(shown.toFixed(unit === 'ft' ? 1 : 2));
}

/** The same for a sentence, where the unit stands elsewhere. */
function lengthText(lengthM: number, unit: LengthUnit): string {
  return sayFigureText(String(lengthFigure(lengthM, unit)));
}

/** `12.5 m`, `41 ft`: tenths of a metre, feet in halves at most; whole ones from a hundred on. */
export function formatLength(lengthM: number, unit: LengthUnit): string {
  const shown = lengthIn(lengthM, unit);
  const parts = Math.abs(shown) >= 100 ? 1 : unit === 'ft' ? 2 : 10;
  const rounded = Math.round(shown * parts) / parts;
  return `${figure(rounded, Number.isInteger(rounded) ? 0 : 1)}${FIXED_SPACE}${unit}`;
}

const SQUARE_FEET = 1 / M_PER_FOOT ** 2;

/** A figure in a sentence, with the decimal sign of the language spoken. */
const FIGURE = String.raw`(\d+(?:[.,]\d+)?)`;
const AREA = new RegExp(t`${FIGURE} square metres`, 'g');
const FALL = new RegExp(t`${FIGURE} m in 100 m` + String.raw`\b`, 'g');
const SIDES = new RegExp(t`${FIGURE} by ${FIGURE} m` + String.raw`\b`, 'g');
const LENGTH = new RegExp(FIGURE + String.raw` m\b`, 'g');

function valueOf(figureText: string): number {
  return Number(figureText.replace(',', '.'));
}

/** A sentence that tells lengths in metres, as `analysis` makes them, told in the unit of the plan. */
export function inLengthUnit(sentence: string, unit: LengthUnit): string {
  if (unit === 'm') return sentence;
  return sentence
    .replace(AREA, (_, area: string) => t`${Math.round(valueOf(area) * SQUARE_FEET)} square feet`)
    .replace(FALL, (_, fall: string) => t`${fall} in 100`)
    .replace(
      SIDES,
      (_, a: string, b: string) => t`${lengthText(valueOf(a), unit)} by ${formatLength(valueOf(b), unit)}`,
    )
    .replace(LENGTH, (_, length: string) => formatLength(valueOf(length), unit));
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
