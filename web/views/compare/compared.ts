import type { LevelAnswer, Ranking, TypeAnswer } from '../../../analysis/answer/assessment.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import { parseIsoDay } from '../../../analysis/units/calendar.ts';
import { sortPeriod } from '../../format/answer-words.ts';
import { longestTold } from '../../format/periods.ts';
import type { ColdestNight } from '../../state/ports.ts';
import { coldestAtC } from '../../state/winter-bars.ts';
import type { Ground } from './terrain-words.ts';

/** A pinned place with its answer. */
export interface Compared extends Ground {
  /** 1 to 4, as on the map. */
  readonly number: number;
  /** `SC 130 Corrow (2)`. */
  readonly name: string;
  readonly ranking: Ranking;
  readonly nights: readonly ColdestNight[];
}

/** One type's answers at the places compared, in their order. */
export interface TypeRow {
  readonly type: TypeAnswer;
  readonly levels: readonly LevelAnswer[];
}

/** How rare, with what is never told cut off, so that two bounds don't look like a difference. */
function told(level: LevelAnswer): number {
  return Math.max(1, Math.min(sortPeriod(level), longestTold(level.counted.winters)));
}

/** Kinds with the same thresholds have the same answers everywhere: one of them is enough. */
function differsFromThoseBefore(row: TypeRow, at: number, rows: readonly TypeRow[]): boolean {
  const periods = (levels: readonly LevelAnswer[]): string => levels.map(told).join(' ');
  return !rows.slice(0, at).some(({ levels }) => periods(levels) === periods(row.levels));
}

/**
 * The chosen type first, then those whose answers lie farthest apart (as a ratio of periods), at most `most` in all.
 */
export function typeRows(
  places: readonly Compared[],
  level: Level,
  focusId: string,
  showRootstocks: boolean,
  most = 6,
): readonly TypeRow[] {
  if (places.length === 0) return [];
  const rows = places[0].ranking.types
    .filter(({ id, use }) => use !== 'rootstock' || showRootstocks || id === focusId)
    .flatMap((type): (TypeRow & { apart: number })[] => {
      const levels = places.flatMap(
        ({ ranking }) =>
          ranking.types.find(({ id }) => id === type.id)?.levels.find((entry) => entry.level === level) ?? [],
      );
      if (levels.length < places.length) return [];
      const periods = levels.map(told);
      return [{ type, levels, apart: Math.max(...periods) / Math.min(...periods) }];
    });
  const focus = rows.filter(({ type }) => type.id === focusId);
  const others = rows.filter(({ type }) => type.id !== focusId).sort((a, b) => b.apart - a.apart);
  return [...focus, ...others].filter(differsFromThoseBefore).slice(0, most);
}

/** Coldest and mildest of the places for one type and level, `null` with fewer than two or no difference. */
export function extremesOf(
  places: readonly Compared[],
  row: TypeRow,
): { readonly coldest: Compared; readonly mildest: Compared } | null {
  const order = places.map((_, i) => i).sort((a, b) => sortPeriod(row.levels[a]) - sortPeriod(row.levels[b]));
  const [first, last] = [order[0], order.at(-1)!];
  if (order.length < 2 || sortPeriod(row.levels[first]) === sortPeriod(row.levels[last])) return null;
  return { coldest: places[first], mildest: places[last] };
}

/** The coldest winter of a place and the middle one, for some hours; `null` when no winter has a value. */
export function winterLevels(
  { history }: Ranking,
  hours: number,
): { readonly coldestC: number; readonly winter: number; readonly middleC: number } | null {
  const levels = history
    .flatMap((entry) => {
      const levelC = entry.complete ? coldestAtC(entry, hours) : null;
      return levelC === null ? [] : [{ winter: entry.winter, levelC }];
    })
    .sort((a, b) => a.levelC - b.levelC);
  if (levels.length === 0) return null;
  const half = (levels.length - 1) / 2;
  return {
    coldestC: levels[0].levelC,
    winter: levels[0].winter,
    middleC: (levels[Math.floor(half)].levelC + levels[Math.ceil(half)].levelC) / 2,
  };
}

/** Day of the cold season, 0 on 1 July in the north and on 1 January in the south. */
function seasonDay(date: string, winter: number, hemisphere: 'north' | 'south'): number {
  const start = hemisphere === 'north' ? `${winter - 1}-07-01` : `${winter}-01-01`;
  return (parseIsoDay(date) ?? 0) - (parseIsoDay(start) ?? 0);
}

/** Earliest and latest in the season among the coldest nights of winters that hit, as ISO days; `null` without any. */
export function hitDates(
  nights: readonly ColdestNight[],
  level: LevelAnswer,
  hemisphere: 'north' | 'south',
): { readonly first: string; readonly last: string } | null {
  const hits = new Set(level.counted.hit_winters);
  const dated = nights
    .filter(({ winter }) => hits.has(winter))
    .map(({ date, winter }) => ({ date, day: seasonDay(date, winter, hemisphere) }))
    .sort((a, b) => a.day - b.day);
  return dated.length === 0 ? null : { first: dated[0].date, last: dated.at(-1)!.date };
}

/** One winter of a strip. */
export interface StripWinter {
  readonly winter: number;
  readonly state: 'hit' | 'free' | 'unknown';
}

/** Every winter of a place as hit, free of a hit, or not known. */
export function stripWinters({ history }: Ranking, level: LevelAnswer): readonly StripWinter[] {
  const hits = new Set(level.counted.hit_winters);
  return history.map(({ winter, complete }) => ({
    winter,
    state: hits.has(winter) ? 'hit' : complete ? 'free' : 'unknown',
  }));
}
