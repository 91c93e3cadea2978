import { t } from '../../../analysis/language/t.ts';
import type { CoverRecord } from '../../../analysis/cover/cover-nights.ts';
import { timetable } from '../../../analysis/cover/timetable.ts';
import { formatWinter } from '../../format/dates.ts';
import { plural } from '../../format/numbers.ts';
import { textInUnit } from '../../format/text-in-unit.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { meanFigure } from '../cover/cover-words.ts';

/** What to do at one hour of the day. */
export interface HourOfWork {
  readonly when: string;
  readonly what: readonly string[];
}

/** The work of a cover through a cold day and the morning after, steps of one hour together. */
export function hoursOfWork(
  cover: readonly string[],
  container: boolean,
  unit: TemperatureUnit,
): readonly HourOfWork[] {
  const hours = new Map<string, string[]>();
  for (const { when, what } of timetable([{ label: '', cover, container }], 'calm')) {
    const key = textInUnit(when, unit);
    hours.set(key, [...(hours.get(key) ?? []), textInUnit(what, unit)]);
  }
  return [...hours].map(([when, what]) => ({ when, what }));
}

/** `About 3.4 nights a winter to cover, 12 in the worst (1989–90).` */
export function nightsToCover(
  { toCover, completeWinters }: CoverRecord,
  hemisphere: 'north' | 'south',
): string {
  if (completeWinters === 0) return '';
  const { worst } = toCover;
  if (worst === null) return t`In none of these winters would it have had to go on.`;
  return t`It would have gone on ${meanFigure(toCover)} nights a winter on average, and on ${plural(
    worst.nights,
    t`night`,
    t`nights`,
  )} in the worst, ${formatWinter(worst.winter, hemisphere)}.`;
}
