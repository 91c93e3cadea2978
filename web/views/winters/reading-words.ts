import type { Headline } from '../../../analysis/answer/assessment.ts';
import type { ChangeTest, ThreeReadings } from '../../../analysis/answer/three-readings.ts';
import { formatWinter } from '../../format/dates.ts';
import { plural } from '../../format/numbers.ts';
import { formatHeadline, formatRangeWithin, longestTold } from '../../format/periods.ts';
import { formatDifference } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import type { MapWinters } from '../../state/chosen.ts';

/** Below this chance a change is called one; from the next on it is called none (convention of such tests). */
const CLEAR = 0.05;
const FAINT = 0.1;

/** One reading as a row. */
export interface ReadingRow {
  readonly id: 'all' | 'last30' | 'moving';
  readonly name: string;
  /** What it is made from. */
  readonly from: string;
  readonly headline: Headline;
  readonly winters: number;
  /** `about 1 winter in 12`. */
  readonly words: string;
  /** `range 1 in 8 to 1 in 20`, `''` at a bound. */
  readonly range: string;
  /** The map's own name for this reading; `null`: the map doesn't show it. */
  readonly map: MapWinters | null;
}

/** The moving curve's period under the page's own rule: beyond twice the record it is a bound. */
export function movingHeadline(
  { period, low, high }: { readonly period: number; readonly low: number; readonly high: number },
  winters: number,
): Headline {
  const longest = longestTold(winters);
  if (period > longest) {
    const bound = Math.min(low, longest);
    return { period: bound, low: bound, high: null, basis: 'beyond', agrees: true };
  }
  return { period, low, high: Number.isFinite(high) ? high : null, basis: 'fitted', agrees: true };
}

/** The readings that can be told, the whole record first. */
export function readingRows(
  { whole, last30, moving }: ThreeReadings,
  hemisphere: 'north' | 'south',
  noun: string,
): readonly ReadingRow[] {
  if (!whole) return [];
  const row = (
    id: ReadingRow['id'],
    name: string,
    from: string,
    headline: Headline,
    winters: number,
  ): ReadingRow => ({
    id,
    name,
    from,
    headline,
    winters,
    words: formatHeadline(headline, winters),
    range:
      headline.basis === 'beyond' || headline.basis === 'not seen'
        ? ''
        : `range ${formatRangeWithin(headline.low, headline.high, winters)}`,
    map: id === 'moving' ? null : id,
  });
  const counted = ({ hits, winters, first, last }: NonNullable<typeof whole>): string =>
    `hit in ${hits} of ${plural(winters, noun)}, ${formatWinter(first, hemisphere)} to ${formatWinter(last, hemisphere)}`;
  return [
    row('all', 'Whole record', counted(whole), whole.headline, whole.winters),
    ...(last30 ? [row('last30', 'Last 30 winters', counted(last30), last30.headline, last30.winters)] : []),
    ...(moving
      ? [
          row(
            'moving',
            'Curve moving with the year',
            `as it stands in ${formatWinter(moving.winter, hemisphere)}`,
            movingHeadline(moving, whole.winters),
            whole.winters,
          ),
        ]
      : []),
  ];
}

function chance(p: number): string {
  return p < 0.001 ? 'p under 0.001' : `p = ${p < 0.1 ? p.toFixed(3) : p.toFixed(2)}`;
}

/** What both tests come to, in one sentence. */
export function changeSentence(change: ChangeTest | null, unit: TemperatureUnit): string {
  if (!change) return 'Too few winters to test for a change.';
  const { mannKendallP, ratioP, senCPerDecade } = change;
  const tests = `Mann-Kendall ${chance(mannKendallP)}`;
  const better = `a curve that moves with the year`;
  if (mannKendallP >= FAINT && ratioP >= FAINT)
    return `The coldest nights show no clear change (${tests}), and ${better} fits no better than one that stays (${chance(ratioP)}).`;
  const size = formatDifference(Math.abs(senCPerDecade), unit, 2).replace('+', '');
  const way = `${senCPerDecade >= 0 ? 'milder' : 'colder'} by ${size} a decade`;
  if (mannKendallP < CLEAR && ratioP < CLEAR)
    return `The coldest nights have grown ${way} (${tests}), and ${better} fits them better than one that stays (${chance(ratioP)}).`;
  return `The signs of a change are mixed: ${way} by the middle of all pairs of winters (${tests}); ${better} against one that stays: ${chance(ratioP)}.`;
}
