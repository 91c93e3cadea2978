import type { Headline } from '../../../analysis/answer/assessment.ts';
import type { ChangeTest, ThreeReadings } from '../../../analysis/answer/three-readings.ts';
import { t } from '../../../analysis/language/t.ts';
import { formatWinter } from '../../format/dates.ts';
import { countedWinters } from '../../format/estimated.ts';
import { formatHeadline, formatRangeWithin, longestTold } from '../../format/periods.ts';
import { figure, formatSize } from '../../format/temperatures.ts';
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
  estimated: boolean,
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
        : t`range ${formatRangeWithin(headline.low, headline.high, winters)}`,
    map: id === 'moving' ? null : id,
  });
  const counted = ({ hits, winters, first, last }: NonNullable<typeof whole>): string =>
    t`hit in ${hits} of ${countedWinters(winters, estimated)}, ${formatWinter(first, hemisphere)} to ${formatWinter(last, hemisphere)}`;
  return [
    row('all', t`Whole record`, counted(whole), whole.headline, whole.winters),
    ...(last30 ? [row('last30', t`Last 30 winters`, counted(last30), last30.headline, last30.winters)] : []),
    ...(moving
      ? [
          row(
            'moving',
            t`Curve moving with the year`,
            t`as it stands in ${formatWinter(moving.winter, hemisphere)}`,
            movingHeadline(moving, whole.winters),
            whole.winters,
          ),
        ]
      : []),
  ];
}

function chance(p: number): string {
  return p < 0.001 ? t`p under ${figure(0.001, 3)}` : `p = ${figure(p, p < 0.1 ? 3 : 2)}`;
}

/** What both tests come to, in one sentence. */
export function changeSentence(change: ChangeTest | null, unit: TemperatureUnit): string {
  if (!change) return t`Too few winters to test for a change.`;
  const { mannKendallP, ratioP, senCPerDecade } = change;
  const tests = `Mann-Kendall ${chance(mannKendallP)}`;
  if (mannKendallP >= FAINT && ratioP >= FAINT)
    return t`The coldest nights show no clear change (${tests}), and a curve that moves with the year fits no better than one that stays (${chance(ratioP)}).`;
  const size = formatSize(senCPerDecade, unit, 2);
  const way = senCPerDecade >= 0 ? t`milder by ${size} a decade` : t`colder by ${size} a decade`;
  if (mannKendallP < CLEAR && ratioP < CLEAR)
    return t`The coldest nights have grown ${way} (${tests}), and a curve that moves with the year fits them better than one that stays (${chance(ratioP)}).`;
  return t`The signs of a change are mixed: ${way} by the middle of all pairs of winters (${tests}); a curve that moves with the year against one that stays: ${chance(ratioP)}.`;
}
