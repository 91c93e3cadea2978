import { sayFigure } from '../language/figures.ts';
import { t } from '../language/t.ts';
import type { DailySeries } from '../records/series.ts';
import { fahrenheitDifferenceToCelsius } from '../units/temperature.ts';
import { MINIMA_ONLY_S4_ERROR_F } from './sustained-from-minima.ts';

/** Days with both extremes below which a record can't tell its usual range of the day: a month's worth. */
export const DAYS_WITH_BOTH_MIN = 30;

/** Whether a record has too few maxima to fill those that are missing by its own medians. */
export function hasFewMaxima({ tminC, tmaxC }: DailySeries): boolean {
  let both = 0;
  for (let i = 0; i < tminC.length; i++) if (!Number.isNaN(tminC[i] + tmaxC[i])) both++;
  return both < DAYS_WITH_BOTH_MIN;
}

/** What the reader of such a record's answers should know, one sentence. */
export function fewMaximaNote(series: DailySeries): string {
  const errorC = sayFigure(fahrenheitDifferenceToCelsius(MINIMA_ONLY_S4_ERROR_F), 1);
  return series.tmaxC.every(Number.isNaN)
    ? t`The daily record has no maxima, so the hours of cold are estimated from its minima; on nights with frost the level held for 4 hours is then ${errorC} °C off on average, and longer hours are less sure.`
    : t`The daily record has hardly any maxima, so the hours of cold are estimated from its minima; on nights with frost the level held for 4 hours is then ${errorC} °C off on average, and longer hours are less sure.`;
}
