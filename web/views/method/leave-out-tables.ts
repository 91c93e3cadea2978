import { t } from '../../../analysis/language/t.ts';
import type { PackLeaveOut, PackLeaveOutErrors } from '../../../analysis/records/pack.ts';
import { formatChance, formatCount, plural } from '../../format/numbers.ts';
import { differenceIn, figure } from '../../format/temperatures.ts';
import { unitSymbol, type TemperatureUnit } from '../../format/unit.ts';
import type { AccuracyTable } from './accuracy-tables.ts';

/** `minimum` or `4 hours`. */
export function durationName(hours: number): string {
  return hours === 0 ? t`minimum` : plural(hours, t`hour`, t`hours`);
}

/** Lapse of the plain comparison, the standard atmosphere's, as its reader counts: by kilometre or by 1,000 feet. */
export function lapseWords(unit: TemperatureUnit): string {
  return unit === 'C'
    ? t`${figure(6.5, 1)}\u00a0°C for each kilometre`
    : t`${figure(3.6, 1)}\u00a0°F for each ${formatCount(1000)}\u00a0ft`;
}

function rows(
  { third, one }: PackLeaveOut,
  cells: (errors: PackLeaveOutErrors) => readonly string[],
): (readonly string[])[] {
  const of = (how: string, all: readonly PackLeaveOutErrors[]) =>
    all.map((errors) => [`${how}, ${durationName(errors.hours)}`, ...cells(errors)]);
  return [...of(t`a third left out`, third), ...of(t`one left out`, one)];
}

/** Errors of estimates beside those of plainer ways, and how often the ranges hold. */
export function leaveOutTables(leaveOut: PackLeaveOut, unit: TemperatureUnit): readonly AccuracyTable[] {
  const degrees = (differenceC: number): string => figure(differenceIn(differenceC, unit), 2);
  const symbol = unitSymbol(unit);
  return [
    {
      title: t`Level that 1 winter in 10 reaches: mean size of the error, ${symbol}`,
      columns: ['', t`stations`, t`as here`, t`bias`, t`nearest station`, t`eight nearest`, t`hits`],
      rows: rows(leaveOut, (errors) => [
        formatCount(errors.stations),
        degrees(errors.mean_error_c),
        degrees(errors.bias_c),
        degrees(errors.nearest_mean_error_c),
        degrees(errors.inverse_distance_mean_error_c),
        errors.hit_ratio === null ? '–' : figure(errors.hit_ratio, 2),
      ]),
    },
    {
      title: t`90% ranges: how many hold what was observed, mean width and interval score, ${symbol}`,
      columns: ['', t`whole range`, t`width`, t`score`, t`same winters`, t`width`, t`score`],
      rows: rows(leaveOut, ({ interval, same_winters: same }) =>
        [interval, same].flatMap(({ coverage, mean_width_c: width, score_c: score }) => [
          formatChance(coverage),
          degrees(width),
          degrees(score),
        ]),
      ),
    },
  ];
}
