import type { LevelAnswer } from '../../../analysis/answer/assessment.ts';
import type { CitrusType } from '../../../analysis/tree/catalogue.ts';
import { levelWords, rareEnd } from '../../format/answer-words.ts';
import { formatChance, formatHours } from '../../format/numbers.ts';
import { gainWords, hasGain } from '../../format/gain-words.ts';
import {
  formatHeadlineShort,
  formatPeriodShort,
  formatPeriodWithin,
  formatRangeWithin,
} from '../../format/periods.ts';
import { formatDifference, formatTemperature, formatTemperatureRange } from '../../format/temperatures.ts';
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
  if (level.level === 'kill') return `${range}, ${held}\n${own.basis}`;
  return `${formatTemperature(level.threshold_c, unit)}, ${held}\n(${range})\n${own.basis}`;
}

function penaltiesCell(level: LevelAnswer, unit: TemperatureUnit): string {
  const causes = Object.entries(level.penalties_c).filter(([, value]) => value !== 0);
  if (causes.length === 0) return 'none';
  return causes.map(([cause, value]) => `${formatDifference(value, unit)} ${causeWords(cause)}`).join('\n');
}

function countedCell({ counted }: LevelAnswer): string {
  const range = counted.winters === 0 ? '–' : formatRangeWithin(counted.low, counted.high, counted.winters);
  return `${counted.hits} of ${counted.winters}
${range}`;
}

function fittedCell({ fitted, counted: { winters } }: LevelAnswer): string {
  if (!fitted) return 'no curve under 20 winters';
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
      ? `rarer than ${formatPeriodShort(low.period)}`
      : formatPeriodWithin(low.period, winters);
  return [
    `${formatTemperature(low.threshold_c, unit)}: ${rare}`,
    `${formatTemperature(high.threshold_c, unit)}: ${formatPeriodWithin(high.period, winters)}`,
  ].join('\n');
}

function endsCell({ if_gain: { low, high }, counted: { winters } }: LevelAnswer): string {
  return [
    `least: ${formatHeadlineShort(low.headline, winters)}`,
    `most: ${formatHeadlineShort(high.headline, winters)}`,
  ].join('\n');
}

function recentCell({ beside: { recent } }: LevelAnswer): string {
  if (!recent) return '–';
  return `${recent.hits} of ${recent.winters}\n${recent.period === null ? 'none' : formatPeriodShort(recent.period)}`;
}

function chanceCell({ chance_in_years: chance, beside }: LevelAnswer): string {
  if (chance.p === null) return '–';
  const range =
    chance.low === null || chance.high === null
      ? ''
      : `\n${formatChance(chance.low)} to ${formatChance(chance.high)}`;
  const seen = beside.window_share === null ? '' : `\nseen in ${formatChance(beside.window_share)}`;
  return formatChance(chance.p) + range + seen;
}

function nightsCell(level: LevelAnswer): string {
  const nights = level.nights_per_winter;
  return nights === null ? '–' : nights < 0.05 && nights > 0 ? 'under 0.1' : nights.toFixed(1);
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
    line('Answer', 'The curve where there is one; beyond twice the record only a bound.', levelWords),
    line(
      'Threshold',
      'For a mature, healthy, hardened tree, held for these hours; its own range; how it is known.',
      (level) => thresholdCell(level, catalogue, unit),
    ),
    line('Moved by', 'What the tree as chosen adds: plus means hurt at a warmer temperature.', (level) =>
      penaltiesCell(level, unit),
    ),
    ...(levels.some(hasGain)
      ? [
          line(
            'Spot and cover',
            'Degrees they add to the air, with the range of what is known of them.',
            (level) => gainWords(level, unit).replace(' and ', '\n'),
          ),
          line(
            'If they gave',
            'The answer should they give no more than the low end, or all of the high end.',
            endsCell,
          ),
        ]
      : []),
    line('Counted', 'Complete winters with at least one hit, and the 90% range of the count.', countedCell),
    line('Curve', 'Extreme-value curve through all complete winters, with its 90% range.', fittedCell),
    line(
      'Other fit',
      'The same curve fitted by maximum likelihood, as a check on the one above.',
      ({ beside, fitted, counted }) =>
        fitted === null ? '–' : formatPeriodWithin(beside.likelihood_period, counted.winters),
    ),
    line('Last 30 winters', 'The count over the end of the record, beside the whole.', recentCell),
    line('If threshold were', 'The answer at both ends of the threshold’s own range.', (level) =>
      thresholdEndsCell(level, unit),
    ),
    line(
      'With duration',
      'A second reading in which long cold hurts at warmer levels: a choice of this page, not a source.',
      ({ with_duration: reading, counted }) =>
        `${reading.hits} of ${counted.winters}\n${reading.period === null ? '–' : formatPeriodShort(reading.period)}`,
    ),
    line(
      `Chance in ${years === 1 ? '1 winter' : `${years} winters`}`,
      'At least one hit within so many winters, by the curve; below it, how many such stretches of the record had one.',
      chanceCell,
    ),
    ...(levels.every(({ nights_per_winter: nights }) => nights === null)
      ? []
      : [line('Nights a winter', 'Mean number of nights with a hit in a complete winter.', nightsCell)]),
  ];
}
