import { sayFigureText } from '../../analysis/language/figures.ts';
import { t } from '../../analysis/language/t.ts';
import { fahrenheitDifferenceToCelsius, fahrenheitToCelsius } from '../../analysis/units/temperature.ts';
import { FIXED_SPACE, figure } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

/** Words of the language that stand between two figures, and those after which a temperature stands and not a difference. */
const BETWEEN = t`to|and`;
const BEFORE_A_LEVEL = t`at|near|below|before`;

const NUMBER = String.raw`-?\d+(?:[.,]\d+)?`;
const SOME = String.raw`${NUMBER}(?: (?:${BETWEEN}) ${NUMBER})?`;
const RANGE = String.raw`(${NUMBER})(?: (?:${BETWEEN}) (${NUMBER}))?[ \u00a0]°F`;
const BOTH = new RegExp(String.raw`(${SOME})[ \u00a0]°F \((${SOME})[ \u00a0]°C\)`, 'g');
// A figure before the word makes it one of those between two figures: Spanish has the same word for both.
const LEVEL = new RegExp(String.raw`(\d )?\b(${BEFORE_A_LEVEL}) ${RANGE}`, 'gi');
const DIFFERENCE = new RegExp(RANGE, 'g');

/**
 * A sentence of the measures in the unit shown. They are written in °F, some with °C in brackets; after `at`, `near`, `below`
 * and `before` stands a temperature, elsewhere a difference.
 */
export function textInUnit(text: string, unit: TemperatureUnit): string {
  if (unit === 'F') {
    return text
      .replace(BOTH, (_, f: string) => `${f}${FIXED_SPACE}°F`)
      .replace(DIFFERENCE, (found) => withLocalFigures(found));
  }
  return text
    .replace(BOTH, (_, __, c: string) => `${withLocalFigures(c)}${FIXED_SPACE}°C`)
    .replace(LEVEL, (found, figureBefore: string | undefined, word: string, low: string, high?: string) => {
      return figureBefore === undefined ? `${word} ${range(low, high, fahrenheitToCelsius)}` : found;
    })
    .replace(DIFFERENCE, (_, low: string, high?: string) => range(low, high, fahrenheitDifferenceToCelsius));
}

function range(low: string, high: string | undefined, toC: (f: number) => number): string {
  const written = (f: string): string => {
    const degreesC = toC(Number(f.replace(',', '.')));
    return figure(degreesC, Math.round(degreesC * 10) % 10 === 0 ? 0 : 1);
  };
  const both = high === undefined ? written(low) : t`${written(low)} to ${written(high)}`;
  return `${both}${FIXED_SPACE}°C`;
}

/** A catalogue has figures as one region of its language writes them, the reader may be of another. */
function withLocalFigures(text: string): string {
  return text.replace(/(\d+)[.,](\d+)/g, (_, whole: string, part: string) =>
    sayFigureText(`${whole}.${part}`),
  );
}
