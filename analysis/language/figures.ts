import { ENGLISH, spokenLocale } from './t.ts';

/** Formats cost most when they are made; their kind is the key. */
const made = new Map<string, Intl.NumberFormat>();

function formatOf(digits: number, isGrouped: boolean): Intl.NumberFormat {
  const key = `${spokenLocale()} ${digits} ${isGrouped}`;
  const format =
    made.get(key) ??
    new Intl.NumberFormat(spokenLocale(), {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      useGrouping: isGrouped && 'auto',
    });
  made.set(key, format);
  return format;
}

/** A plain figure (`12.5`, as `toFixed` writes it) with the decimal sign of the language spoken, its digits untouched. */
export function sayFigureText(text: string): string {
  if (spokenLocale() === ENGLISH) return text;
  const digits = text.split('.')[1]?.length ?? 0;
  // As a text, so that it isn't rounded a second time.
  return formatOf(digits, false).format(text as unknown as number);
}

/** A figure with so many digits behind the decimal sign. */
export function sayFigure(value: number, digits: number): string {
  return sayFigureText(value.toFixed(digits));
}

/** A whole number with its thousands apart: `12,345`, in Spanish `12.345`. */
export function sayCount(count: number): string {
  const whole = Math.round(count);
  if (spokenLocale() === ENGLISH) return String(whole).replace(/\B(?=(\d{3})+$)/g, ',');
  return formatOf(0, true).format(whole);
}

/** Whole hundredths: `34%`, in Spanish `34 %`. */
export function sayPercent(whole: number): string {
  if (spokenLocale() === ENGLISH) return `${whole}%`;
  return new Intl.NumberFormat(spokenLocale(), { style: 'percent' }).format(whole / 100);
}
