import type { LevelAnswer } from '../../../analysis/answer/assessment.ts';
import { t } from '../../../analysis/language/t.ts';
import type { CitrusType } from '../../../analysis/tree/catalogue.ts';
import { levelWords, rareEnd } from '../../format/answer-words.ts';
import { BASIS_NAMES } from '../../format/basis-words.ts';
import { formatChance, formatHours, plural } from '../../format/numbers.ts';
import { gainWords, hasGain } from '../../format/gain-words.ts';
import {
  formatHeadlineShort,
  formatPeriodShort,
  formatPeriodWithin,
  formatRangeWithin,
} from '../../format/periods.ts';
import {
  figure,
  formatDifference,
  formatTemperature,
  formatTemperatureRange,
} from '../../format/temperatures.ts';
import { causeWords } from '../../format/tree-words.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

/** One line of the table of levels: a fact, what it means, and its cell for each level. */
export interface LevelFact {
  readonly label: string;
  readonly meaning: string;
  readonly cells: readonly string[];
}

function thresholdCell(level: LevelAnswer, catalogue: CitrusType | null, unit: TemperatureUnit): string {
  const own = catalogue?.thresholds[level.level];
  const held = formatHours(level.hours);
  if (!own) return `${formatTemperature(level.threshold_c, unit)}, ${held}`;
  const range = formatTemperatureRange(own.lowC, own.highC, unit);
  if (level.level === 'kill') return `${range}, ${held}\n${BASIS_NAMES[own.basis]}`;
  return `${formatTemperature(level.threshold_c, unit)}, ${held}\n(${range})\n${BASIS_NAMES[own.basis]}`;
}

function penaltiesCell(level: LevelAnswer, unit: TemperatureUnit): string {
  const causes = Object.entries(level.penalties_c).filter(([, value]) => value !== 0);
  if (causes.length === 0) return t`none`;
  return causes.map(([cause, value]) => `${formatDifference(value, unit)} ${causeWords(cause)}`).join('\n');
}

function countedCell({ counted }: LevelAnswer): string {
  const range = counted.winters === 0 ? '–' : formatRangeWithin(counted.low, counted.high, counted.winters);
  return `${t`${counted.hits} of ${counted.winters}`}\n${range}`;
}

function fittedCell({ fitted, counted: { winters } }: LevelAnswer): string {
  if (!fitted) return t`no curve under 20 winters`;
  const period = formatPeriodWithin(fitted.period, winters);
  const range = formatRangeWithin(fitted.low, fitted.high, winters);
  return period === range
    ? period
    : `${period}
${range}`;
}

function thresholdEndsCell(level: LevelAnswer, unit: TemperatureUnit): string {
  const { low, high } = level.if_threshold;
  const { winters } = level.counted;
  const rare =
    rareEnd(level) === null && low.period !== null
      ? t`rarer than ${formatPeriodShort(low.period)}`
      : formatPeriodWithin(low.period, winters);
  return [
    `${formatTemperature(low.threshold_c, unit)}: ${rare}`,
    `${formatTemperature(high.threshold_c, unit)}: ${formatPeriodWithin(high.period, winters)}`,
  ].join('\n');
}

function endsCell({ if_gain: { low, high }, counted: { winters } }: LevelAnswer): string {
  return [
    t`least: ${formatHeadlineShort(low.headline, winters)}`,
    t`most: ${formatHeadlineShort(high.headline, winters)}`,
  ].join('\n');
}

function recentCell({ beside: { recent } }: LevelAnswer): string {
  if (!recent) return '–';
  return `${t`${recent.hits} of ${recent.winters}`}\n${recent.period === null ? t`none` : formatPeriodShort(recent.period)}`;
}

function chanceCell({ chance_in_years: chance, beside }: LevelAnswer): string {
  if (chance.p === null) return '–';
  const p = formatChance(chance.p);
  const [low, high] = [chance.low, chance.high].map((end) => (end === null ? '' : formatChance(end)));
  // Ends that both read as the figure itself say nothing more.
  const range = low === '' || high === '' || (low === p && high === p) ? '' : `\n${t`${low} to ${high}`}`;
  const seen = beside.window_share === null ? '' : `\n${t`seen in ${formatChance(beside.window_share)}`}`;
  return p + range + seen;
}

function nightsCell(level: LevelAnswer): string {
  const nights = level.nights_per_winter;
  return nights === null ? '–' : nights < 0.05 && nights > 0 ? t`under ${figure(0.1, 1)}` : figure(nights, 1);
}

/** Everything told about a type's levels, line by line. */
export function levelFacts(
  levels: readonly LevelAnswer[],
  catalogue: CitrusType | null,
  unit: TemperatureUnit,
  years: number,
): readonly LevelFact[] {
  const line = (label: string, meaning: string, cell: (level: LevelAnswer) => string): LevelFact => ({
    label,
    meaning,
    cells: levels.map(cell),
  });
  return [
    line(t`Answer`, t`The curve where there is one; beyond twice the record only a bound.`, levelWords),
    line(
      t`Threshold`,
      t`For a mature, healthy, hardened tree, held for these hours; its own range; how it is known.`,
      (level) => thresholdCell(level, catalogue, unit),
    ),
    line(t`Moved by`, t`What the tree as chosen adds: plus means hurt at a warmer temperature.`, (level) =>
      penaltiesCell(level, unit),
    ),
    ...(levels.some(hasGain)
      ? [
          line(
            t`Spot and cover`,
            t`Degrees they add to the air, with the range of what is known of them.`,
            (level) => gainWords(level, unit).replace(t` and `, '\n'),
          ),
          line(
            t`If they gave`,
            t`The answer should they give no more than the low end, or all of the high end.`,
            endsCell,
          ),
        ]
      : []),
    line(t`Counted`, t`Complete winters with at least one hit, and the 90% range of the count.`, countedCell),
    line(t`Curve`, t`Extreme-value curve through all complete winters, with its 90% range.`, fittedCell),
    line(
      t`Other fit`,
      t`The same curve fitted by maximum likelihood, as a check on the one above.`,
      ({ beside, fitted, counted }) =>
        fitted === null ? '–' : formatPeriodWithin(beside.likelihood_period, counted.winters),
    ),
    line(t`Last 30 winters`, t`The count over the end of the record, beside the whole.`, recentCell),
    line(t`If threshold were`, t`The answer at both ends of the threshold’s own range.`, (level) =>
      thresholdEndsCell(level, unit),
    ),
    line(
      t`With duration`,
      t`A second reading in which long cold hurts at warmer levels: a choice of this page, not a source.`,
      ({ with_duration: reading, counted }) =>
        `${t`${reading.hits} of ${counted.winters}`}\n${reading.period === null ? '–' : formatPeriodShort(reading.period)}`,
    ),
    line(
      t`Chance in ${plural(years, t`winter`, t`winters`)}`,
      t`At least one hit within so many winters, by the curve; below it, how many such stretches of the record had one.`,
      chanceCell,
    ),
    ...(levels.every(({ nights_per_winter: nights }) => nights === null)
      ? []
      : [line(t`Nights a winter`, t`Mean number of nights with a hit in a complete winter.`, nightsCell)]),
  ];
}
