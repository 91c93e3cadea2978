import type { Ranking } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import { plural } from './numbers.ts';
import { FIXED_SPACE, formatSize } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

/** True where the winters are told from stations around, so that hits and counts are estimates; false on a station. */
export function isEstimated({ place }: Pick<Ranking, 'place'>): boolean {
  return place.basis === 'history' && (place.error_c ?? 0) > 0;
}

/** `61 complete winters`, or `61 estimated winters` where there is no station. */
export function countedWinters(count: number, estimated: boolean): string {
  return estimated
    ? plural(count, t`estimated winter`, t`estimated winters`)
    : plural(count, t`complete winter`, t`complete winters`);
}

/** `± 1.4 °F`. */
export function errorWords(errorC: number, unit: TemperatureUnit): string {
  return `±${FIXED_SPACE}${formatSize(errorC, unit)}`;
}

/** What must stand beside an estimated answer, in one sentence; the ranges hold this error already. */
export function estimateSentence({ place, evidence }: Ranking, unit: TemperatureUnit): string {
  const from = evidence.length === 1 ? t`one station` : plural(evidence.length, t`station`, t`stations`);
  const error = errorWords(place.error_c ?? 0, unit);
  const sentence = t`No thermometer stood here: these winters are estimated from ${from} around, their level good to about ${error}, which the period allows for as well as its range: a colder truth adds more hits than a milder one takes away.`;
  return [sentence, ...heightMissing(place)].join(' ');
}

/** What must be said where nobody knows how high an estimated place lies; nothing where it is known. */
export function heightMissing(place: Ranking['place']): readonly string[] {
  return place.elevation_m === null
    ? [
        t`Its height isn’t known, so the mean height of the stations stands in for it, and the answer can be far off: give the height under “Place”.`,
      ]
    : [];
}
