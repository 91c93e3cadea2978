import { fahrenheitDifferenceToCelsius, fahrenheitToCelsius } from '../../analysis/units/temperature.ts';
import { FIXED_SPACE, figure } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

const NUMBER = String.raw`-?\d+(?:\.\d+)?`;
const BOTH = new RegExp(
  String.raw`(${NUMBER}(?: (?:to|and) ${NUMBER})?)[ \u00a0]°F \((${NUMBER}(?: (?:to|and) ${NUMBER})?)[ \u00a0]°C\)`,
  'g',
);
const LEVEL = new RegExp(
  String.raw`\b(at|near|below|before) (${NUMBER})(?: to (${NUMBER}))?[ \u00a0]°F`,
  'g',
);
const DIFFERENCE = new RegExp(String.raw`(${NUMBER})(?: to (${NUMBER}))?[ \u00a0]°F`, 'g');

/**
 * A sentence of the measures in the unit shown. They are written in °F, some with °C in brackets; after `at`, `near`, `below`
 * and `before` stands a temperature, elsewhere a difference.
 */
export function textInUnit(text: string, unit: TemperatureUnit): string {
  if (unit === 'F') return text.replace(BOTH, (_, f: string) => `${f}${FIXED_SPACE}°F`);
  return text
    .replace(BOTH, (_, __, c: string) => `${c}${FIXED_SPACE}°C`)
    .replace(LEVEL, (_, word: string, low: string, high?: string) => {
      return `${word} ${range(low, high, fahrenheitToCelsius)}`;
    })
    .replace(DIFFERENCE, (_, low: string, high?: string) => range(low, high, fahrenheitDifferenceToCelsius));
}

function range(low: string, high: string | undefined, toC: (f: number) => number): string {
  const written = [low, ...(high === undefined ? [] : [high])].map((f) => {
    const text = figure(toC(Number(f)), 1);
    return text.replace(/\.0$/, '');
  });
  return `${written.join(' to ')}${FIXED_SPACE}°C`;
}
