import type {
  CalendarTask,
  FreezeDates,
  HarvestYear,
  TypeYear,
  YearAnswer,
} from '../../../analysis/answer/year.ts';
import { t } from '../../../analysis/language/t.ts';
import { chanceStep } from '../../charts/harvest-loss.ts';
import type { StripBar, StripRow } from '../../charts/year-strip.ts';
import { formatMonthDay, formatMonthDays } from '../../format/month-day.ts';
import { formatChance } from '../../format/numbers.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { chanceSpans, oneInTen, outOfSeason } from './freeze-season.ts';
import { basisWords, inOrderOfTheYear, TASK_NAMES, taskDates, whyWords } from './task-words.ts';
import { countWith, datesSentence, formatLimit, levelCold, levelName, limitWords } from './year-words.ts';

const BARE: Omit<StripRow, 'key' | 'label' | 'words'> = {
  detail: '',
  starts: false,
  bars: [],
  reach: null,
  under: [],
  days: [],
  before: '',
  after: '',
};

/** A place's year as rows: freezes, the type's levels, its harvest, its tasks. */
export function stripRows(
  answer: YearAnswer,
  type: TypeYear,
  unit: TemperatureUnit,
  estimated: boolean,
): readonly StripRow[] {
  const { hemisphere } = answer;
  const freezes = answer.freezes.map((dates) => {
    return coldRow(
      `freeze ${dates.limit_c}`,
      formatLimit(dates, unit),
      '',
      t`${limitWords(dates, unit)}, or colder,`,
      dates,
    );
  });
  const levels = type.levels.map(({ level, dates }, i) => ({
    ...coldRow(level, levelName(level), limitWords(dates, unit), levelCold(level), dates),
    starts: i === 0,
  }));
  const tasks = inOrderOfTheYear(
    type.tasks.filter(({ id }) => id !== 'harvest' && id !== 'pick-by'),
    hemisphere,
  ).map((task, i) => ({ ...taskRow(task, unit), key: `${task.id} ${i}`, starts: i === 0 }));
  return [...freezes, ...levels, { ...harvestRow(type.harvest), starts: true }, ...tasks];

  function coldRow(key: string, label: string, detail: string, what: string, dates: FreezeDates): StripRow {
    const spans = chanceSpans(dates, hemisphere);
    const widest = oneInTen(dates, hemisphere);
    const { earliest, latest } = dates;
    const seen = earliest !== null && latest !== null;
    return {
      ...BARE,
      ...{ key, label, detail },
      bars: spans.map(({ chance, from, to }) => ({ from, to, look: chanceStep(chance) })),
      reach: seen ? { from: earliest, to: latest } : null,
      under: spans.length === 0 || !type.early_late ? [] : outOfSeason(spans[0], type.early_late, hemisphere),
      before: widest ? formatMonthDay(widest.from) : seen ? formatMonthDay(earliest) : '',
      after: afterWords(widest?.to ?? null, dates),
      words: datesSentence(what, dates, hemisphere, estimated),
    };
  }
}

function harvestRow(harvest: HarvestYear): StripRow {
  const { from, to, halves, always_exposed, pick_by, safe_to_the_end, lost_before_end } = harvest;
  const bars: StripBar[] = halves.map((half) => ({
    from: half.from,
    to: half.to,
    look: half.lost > 0 ? chanceStep(half.lost) : 0,
  }));
  const lost =
    lost_before_end === null
      ? ''
      : lost_before_end >= 1
        ? t`all lost`
        : t`${formatChance(lost_before_end)} lost`;
  const pick = pick_by !== null && !safe_to_the_end ? t`pick by ${formatMonthDay(pick_by)}` : '';
  const losses = halves.map(
    (half) => t`By ${formatMonthDay(half.to)} ${formatChance(half.lost)} of crops are lost`,
  );
  return {
    ...BARE,
    key: 'harvest',
    label: t`Picking`,
    bars: [...bars, { from, to, look: 'window' }],
    days: pick_by !== null && pick !== '' ? [{ date: pick_by, look: 'record' }] : [],
    // Where fruit hangs all winter the bar's ends are no dates of picking.
    ...(always_exposed
      ? { detail: listed(pick, pick === '' ? lost && t`${lost} by spring` : lost && t`else ${lost}`) }
      : {
          detail: lost === '' ? '' : t`${lost} by its end`,
          before: formatMonthDay(from),
          after: listed(formatMonthDay(to), pick),
        }),
    words: `${t`Ripe ${formatMonthDays(from, to, 'long')}.`} ${losses.join('; ')}${losses.length > 0 ? '.' : ''}`,
  };
}

/** What stands after a row of cold: the end of its widest span, or why there is none. */
function afterWords(to: string | null, dates: FreezeDates): string {
  if (to !== null) return formatMonthDay(to);
  const { winters, latest } = dates;
  if (winters === 0) return t`not known`;
  if (latest === null) return t`none on record`;
  return t`${formatMonthDay(latest)}, in ${countWith(dates)} of ${winters}`;
}

function listed(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(', ');
}

function taskRow(task: CalendarTask, unit: TemperatureUnit): StripRow {
  const look = task.basis === 'record' ? 'record' : 'practice';
  return {
    ...BARE,
    key: task.id,
    label: TASK_NAMES[task.id],
    bars: task.to === null ? [] : [{ from: task.from, to: task.to, look }],
    days: task.to === null ? [{ date: task.from, look }] : [],
    after: task.earliest ? t`${taskDates(task)}; earliest ${formatMonthDay(task.earliest)}` : taskDates(task),
    words: `${task.title}: ${taskDates(task, 'long')}, ${basisWords(task)}. ${whyWords(task, unit)}`,
  };
}
