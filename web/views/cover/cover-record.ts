import type { LevelAnswer, Ranking } from '../../../analysis/answer/assessment.ts';
import type { Protection } from '../../../analysis/answer/protection.ts';
import { coverNights, type CoverRecord } from '../../../analysis/cover/cover-nights.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { gainsAt } from '../../../analysis/winter/gain-spread.ts';
import { reachedC } from '../../format/answer-words.ts';

/** What a cover would have meant at a place for one type and level, by the gains' centres. */
export function coverRecord(
  nights: KeptNights,
  { history }: Pick<Ranking, 'history'>,
  level: LevelAnswer,
  bare: Protection,
  covered: Protection,
): CoverRecord {
  const winters = {
    winter: Int16Array.from(history, ({ winter }) => winter),
    complete: Uint8Array.from(history, ({ complete }) => (complete ? 1 : 0)),
  };
  return coverNights(nights, winters, {
    hours: level.hours,
    limitC: reachedC(level),
    without: gainsAt(bare.gains[level.level], 'centreC'),
    withCover: gainsAt(covered.gains[level.level], 'centreC'),
  });
}
