import type { ReadingUnit } from './spot-reading.ts';

/** A number with the unit written behind it, if any. */
export interface NumberText {
  readonly value: number;
  readonly unit: ReadingUnit | null;
}

const NUMBER =
  /^([-+−–]?)\s*(\d*(?:[.,]\d+)?|\d+[.,])\s*(?:°|º|deg(?:rees?)?\.?)?\s*(c|f|celsius|fahrenheit)?$/i;

/** Reads `-2.3`, `−2,3`, `28 °F`, `3.5C`; `null` for anything else. A comma is a decimal mark. */
export function numberText(field: string): NumberText | null {
  const match = NUMBER.exec(field.trim());
  if (!match || !/\d/.test(match[2]!)) return null;
  const value = Number(match[2]!.replace(',', '.'));
  if (!Number.isFinite(value)) return null;
  const letter = match[3]?.[0]?.toUpperCase();
  return {
    value: match[1] === '' || match[1] === '+' ? value : -value,
    unit: letter === 'C' || letter === 'F' ? letter : null,
  };
}

const NAMED = {
  F: /°\s*f|º\s*f|fahrenheit|\bdeg\w*\.?\s*f\b|[([_ ,/]f[)\]]?$|[([]f[)\]]/i,
  C: /°\s*c|º\s*c|celsius|centigrade|\bdeg\w*\.?\s*c\b|[([_ ,/]c[)\]]?$|[([]c[)\]]/i,
};
const ENDING = /[a-z]([CF])$/;

/** The unit that words such as `Low (°F)`, `tmin_c`, `TempF` name, `null` where they name none or both. */
export function unitNamed(words: string): ReadingUnit | null {
  const text = words.trim();
  const ending = ENDING.exec(text)?.[1];
  const [f, c] = [NAMED.F.test(text) || ending === 'F', NAMED.C.test(text) || ending === 'C'];
  return f === c ? null : f ? 'F' : 'C';
}
