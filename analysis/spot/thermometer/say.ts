import { sayDate } from '../../language/dates.ts';
import { sayFigure } from '../../language/figures.ts';
import { civilDate, type DayNumber } from '../../units/calendar.ts';
import { celsiusDifferenceToFahrenheit, celsiusToFahrenheit } from '../../units/temperature.ts';
import type { ReadingUnit } from './spot-reading.ts';

/** A temperature in words, such as `28.4 °F`. */
export function sayTemperature(valueC: number, unit: ReadingUnit): string {
  return `${figure(unit === 'F' ? celsiusToFahrenheit(valueC) : valueC)} °${unit}`;
}

/** A difference of temperatures without its sign, such as `3.1 °F`. */
export function sayDifference(valueC: number, unit: ReadingUnit): string {
  return `${figure(Math.abs(unit === 'F' ? celsiusDifferenceToFahrenheit(valueC) : valueC))} °${unit}`;
}

/** A day in words, such as `5 January 2024`. */
export function sayDay(day: DayNumber): string {
  const { year, month, day: ofMonth } = civilDate(day);
  return sayDate(year, month, ofMonth);
}

function figure(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return (rounded < 0 ? '−' : '') + sayFigure(Math.abs(rounded), 1);
}
