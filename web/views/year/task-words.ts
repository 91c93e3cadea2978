import type { CalendarTask } from '../../../analysis/answer/year.ts';
import { t } from '../../../analysis/language/t.ts';
import { sourceOf } from '../../../analysis/tree/sources.ts';
import { axisDay } from '../../charts/year-strip.ts';
import { formatMonthDay, formatMonthDays } from '../../format/month-day.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { textInUnit } from '../../format/text-in-unit.ts';

/** Short names for the strip, where a title has no room. */
export const TASK_NAMES: Readonly<Record<CalendarTask['id'], string>> = {
  'stop-feeding': t`Stop feeding`,
  toughen: t`Toughen`,
  'covers-ready': t`Covers ready`,
  harvest: t`Pick`,
  'pick-by': t`Pick by`,
  prune: t`Routine pruning`,
  'cut-frozen': t`Cut a frozen tree`,
  plant: t`Plant`,
  bloom: t`Main bloom`,
};

/** To be done when their day comes; what else is told by one day goes on from it. */
const DONE_BY: ReadonlySet<CalendarTask['id']> = new Set(['covers-ready', 'pick-by']);

/** Whether a task has a beginning and no end. */
export function goesOn({ id, to }: Pick<CalendarTask, 'id' | 'to'>): boolean {
  return to === null && !DONE_BY.has(id);
}

/** `15 Aug to 30 Sep`, `by 27 Nov`, `from 8 Mar`. */
export function taskDates(task: CalendarTask, form: 'long' | 'short' = 'short'): string {
  const { from, to } = task;
  if (to !== null) return formatMonthDays(from, to, form);
  const date = formatMonthDay(from, form);
  return goesOn(task) ? t`from ${date}` : t`by ${date}`;
}

/** Whose word the dates are. */
export function basisWords(task: CalendarTask): string {
  switch (task.basis) {
    case 'record':
      return t`from this place’s record`;
    case 'practice':
      return sourceNames(task).length > 0 ? t`common practice` : t`common practice, no source`;
    case 'memory':
      return t`recalled from general guides`;
    case 'inferred':
      return t`inferred from the sources`;
    case 'found':
      return t`as published`;
  }
}

/** The reason in the unit shown, its figures written as everywhere on the page. */
export function whyWords({ why }: CalendarTask, unit: TemperatureUnit): string {
  return textInUnit(why, unit)
    .replace(/(^|[\s(])-(?=\d)/g, '$1\u2212')
    .replace(/(?<=\d) %/g, '%');
}

/** Full names of the sources; the one that says "no source" is said by the basis already. */
export function sourceNames({ sources }: CalendarTask): readonly string[] {
  return sources.filter((key) => key !== 'practice').map(sourceOf);
}

/** In the order of the year, which begins with July, in the south with January. */
export function inOrderOfTheYear(
  tasks: readonly CalendarTask[],
  hemisphere: 'north' | 'south',
): readonly CalendarTask[] {
  return [...tasks].sort((a, b) => axisDay(a.from, hemisphere) - axisDay(b.from, hemisphere));
}
