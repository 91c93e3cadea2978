import type { Level } from '../../../analysis/tree/levels.ts';
import { LEVEL_WORDS } from '../../format/level-words.ts';
import { formatChance, plural } from '../../format/numbers.ts';
import { formatPeriod, formatPeriodFigure, formatPeriodShort } from '../../format/periods.ts';
import type { Headline } from '../../../analysis/answer/assessment.ts';
import { t } from '../../../analysis/language/t.ts';
import type { Corner } from '../../state/chosen.ts';
import type { AreaSummary, ToldPeriod } from './area-summary.ts';

const KM_PER_DEGREE = 111.2;

/** `1 in 12`, `rarer than 1 in 148`. */
export function toldWords({ winters, beyond }: ToldPeriod): string {
  const period = formatPeriodShort(winters);
  return beyond ? t`rarer than ${period}` : period;
}

/** `in about 1 winter in 12`, `less often than 1 winter in 148`. */
function oftenWords({ winters, beyond }: ToldPeriod): string {
  return beyond
    ? t`less often than 1 winter in ${formatPeriodFigure(winters)}`
    : t`in ${formatPeriod(winters)}`;
}

/** What the spread comes to, in one sentence; without an answer why there is none. */
export function areaSentence(summary: AreaSummary, typeName: string, level: Level): string {
  const { coldestTenth, middle, mildestTenth, cells } = summary;
  if (cells === 0) return t`There is no land of this pack inside the area.`;
  if (!coldestTenth || !middle || !mildestTenth)
    return t`No part of the area is near enough to a station for an answer.`;
  const loses = LEVEL_WORDS[level].one;
  if (summary.oneCell)
    return t`A ${typeName} ${loses} there ${oftenWords(middle)}. The area is smaller than a cell of the map, so no spread can be told.`;
  const ends = [oftenWords(coldestTenth), oftenWords(mildestTenth)];
  if (ends[0] === ends[1])
    return t`A ${typeName} ${loses} ${ends[0]} all over the area: its coldest tenth and its mildest are told alike.`;
  return mildestTenth.beyond
    ? t`A ${typeName} ${loses} ${oftenWords(middle)} at the middling spot of the area; in its coldest tenth ${ends[0]} or oftener, in its mildest tenth ${ends[1]}.`
    : t`A ${typeName} ${loses} ${oftenWords(middle)} at the middling spot of the area; in its coldest tenth ${ends[0]} or oftener, in its mildest tenth ${ends[1]} or more rarely.`;
}

/** `412 cells of land, 3% without an answer`. */
export function cellsWords({ cells, unanswered }: AreaSummary): string {
  const land = plural(cells, t`cell of land`, t`cells of land`);
  return unanswered === 0
    ? t`${land}, all answered`
    : t`${land}, ${formatChance(unanswered)} without an answer`;
}

/** The spread as a row on the axis of periods: from the coldest tenth to the mildest, its mark at the middle. */
export function spreadHeadline({ coldestTenth, middle, mildestTenth }: AreaSummary): Headline | null {
  if (!coldestTenth || !middle || !mildestTenth) return null;
  if (middle.beyond)
    return { period: middle.winters, low: coldestTenth.winters, high: null, basis: 'beyond', agrees: true };
  return {
    period: middle.winters,
    low: coldestTenth.winters,
    high: mildestTenth.beyond ? null : mildestTenth.winters,
    basis: 'fitted',
    agrees: true,
  };
}

/** A square of so many kilometres a side around a point, its corners from the south-west round. */
export function squareAround({ lat, lon }: Corner, sideKm: number): readonly Corner[] {
  const north = sideKm / 2 / KM_PER_DEGREE;
  const east = north / Math.cos((lat * Math.PI) / 180);
  const round = (value: number): number => Number(value.toFixed(4));
  return [
    [-1, -1],
    [-1, 1],
    [1, 1],
    [1, -1],
  ].map(([up, right]) => ({ lat: round(lat + up * north), lon: round(lon + right * east) }));
}
