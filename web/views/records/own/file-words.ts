import { t } from '../../../../analysis/language/t.ts';
import type { BadRowReason } from '../../../../analysis/read/bad-rows.ts';
import type { FoundFile } from '../../../gather/brought.ts';
import { formatCount } from '../../../format/numbers.ts';
import { reasonWords } from '../reason-words.ts';

const UNITS = { C: '°C', F: '°F', tenthsC: t`tenths of °C`, tenthsF: t`tenths of °F` };

/** Reasons why a row can't be read, as `analysis/read` tells them. */
const BAD_ROWS: Readonly<Record<string, string>> = {
  'row cut short': t`row cut short`,
  'impossible date': t`impossible date`,
  'impossible time': t`impossible time`,
  'not a number': t`not a number`,
};

/** What a file is, in one line; `null` where it is none of readings or stations. */
export function fileWords(found: FoundFile): string | null {
  if (found.kind === 'list') return t`list of ${formatCount(found.stations)} stations`;
  if (found.kind !== 'readings') return null;
  const [rows, stations] = [formatCount(found.rows), formatCount(found.stations.length)];
  const unit = UNITS[found.unit];
  if (found.hourly)
    return found.stations.length === 1
      ? t`${found.format}: ${rows} hourly readings of one station, in ${unit}`
      : t`${found.format}: ${rows} hourly readings of ${stations} stations, in ${unit}`;
  return found.stations.length === 1
    ? t`${found.format}: ${rows} days of one station, in ${unit}`
    : t`${found.format}: ${rows} days of ${stations} stations, in ${unit}`;
}

/** Rows that were left out for one reason. */
export function badRowWords({ reason, count, lines, example }: BadRowReason): string {
  const why = BAD_ROWS[reason] ?? reason;
  return count === 1
    ? t`Line ${lines[0]} left out: ${why} (“${example}”).`
    : t`${formatCount(count)} rows left out: ${why}, on the lines ${lines.join(', ')}${count > lines.length ? ' …' : ''} (“${example}”).`;
}

/** `12: spike 10, stuck value 2`; a dash where there is none. */
export function countWords(counts: Readonly<Record<string, number>>): string {
  const entries = Object.entries(counts).sort((a, b) => b[1] - a[1]);
  if (entries.length === 0) return '–';
  const sum = entries.reduce((total, [, count]) => total + count, 0);
  return `${formatCount(sum)}: ${entries.map(([reason, count]) => `${reasonWords(reason)} ${formatCount(count)}`).join(', ')}`;
}
