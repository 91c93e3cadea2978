import type { ProtectionTexts } from '../../../analysis/answer/protection.ts';
import type { Ranking } from '../../../analysis/answer/assessment.ts';
import { t } from '../../../analysis/language/t.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import { formatHeadline, formatRangeWithin } from '../../format/periods.ts';
import { formatTemperature } from '../../format/temperatures.ts';
import { shortTypeName } from '../../format/type-names.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import type { ShownSurface } from '../../map/shown-surface.ts';
import type { SurfaceAnswer } from '../../state/surface-state.svelte.ts';

/** What a surface's answer shows, under the names its types have. */
export function shownSurface(
  { ask, surface, against }: SurfaceAnswer,
  atLeastWinters: number,
  nameOf: (typeId: string) => string,
): ShownSurface {
  const named = (typeId: string): string => shortTypeName(nameOf(typeId));
  if (ask.shows === 'where') {
    return {
      view: { mode: 'where', surface, atLeastWinters },
      names: { first: named(ask.first.typeId), second: '', against: '' },
    };
  }
  if (!ask.second || !against)
    return {
      view: { mode: 'periods', surface },
      names: { first: named(ask.first.typeId), second: '', against: '' },
    };
  return {
    view: { mode: 'difference', surface, against },
    names:
      ask.shows === 'recent'
        ? { first: t`last 30 winters`, second: t`all winters`, against: t`the last 30 winters against all` }
        : ask.shows === 'cover'
          ? { first: t`with the cover`, second: t`without`, against: t`with the cover against without` }
          : {
              first: named(ask.first.typeId),
              second: named(ask.second.typeId),
              against: t`against ${named(ask.second.typeId)}`,
            },
  };
}

/** A title with how the trees stand: `Yuzu, wood, on the chosen spot and under the chosen cover`; as it is in the open. */
export function standingTitle(title: string, protection: ProtectionTexts | null): string {
  const { spot, measured, cover } = protection ?? { spot: null, measured: null, cover: null };
  const onSpot = (spot !== null && spot !== 'open') || measured !== null;
  if (cover === null) return onSpot ? t`${title}, on the chosen spot` : title;
  return onSpot
    ? t`${title}, on the chosen spot and under the chosen cover`
    : t`${title}, under the chosen cover`;
}

/** The cold that takes a level of the focused type as its tree is: `20 °F for 4 h`; empty while unknown. */
export function coldWords(
  assessment: Ranking | null,
  typeId: string,
  level: Level,
  unit: TemperatureUnit,
): string {
  const answer = assessment?.types
    .find(({ id }) => id === typeId)
    ?.levels.find((entry) => entry.level === level);
  if (!answer) return '';
  const limitC = Object.values(answer.penalties_c).reduce(
    (sum, penalty) => sum + penalty,
    answer.threshold_c,
  );
  return t`${formatTemperature(limitC, unit)} for ${answer.hours} h`;
}

/** A point's own answer: `about 1 winter in 12` and `range 1 in 8 to 1 in 20`; empty if the type isn't in it. */
export function pointWords(ranking: Ranking, typeId: string, level: Level): readonly string[] {
  const answer = ranking.types.find(({ id }) => id === typeId)?.levels.find((entry) => entry.level === level);
  if (!answer) return [];
  const { headline, counted } = answer;
  const words = formatHeadline(headline, counted.winters);
  // A bound is all that is known there: its range would say it again.
  if (headline.basis === 'beyond' || headline.basis === 'not seen') return [words];
  return [words, t`range ${formatRangeWithin(headline.low, headline.high, counted.winters)}`];
}
