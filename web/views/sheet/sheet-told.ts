import type { Ranking, TypeAnswer } from '../../../analysis/answer/assessment.ts';
import type { LifeAnswer } from '../../../analysis/answer/life.ts';
import type { Protection } from '../../../analysis/answer/protection.ts';
import { t } from '../../../analysis/language/t.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';
import type { TreeState } from '../../../analysis/tree/penalties.ts';
import type { WinterBar } from '../../charts/winter-bars.ts';
import { reachedC } from '../../format/answer-words.ts';
import { coverWords, NO_COVER } from '../../format/cover-words.ts';
import { errorWords, heightMissing, isEstimated } from '../../format/estimated.ts';
import { formatDistance } from '../../format/numbers.ts';
import { recordWords } from '../../format/record-words.ts';
import { textInUnit } from '../../format/text-in-unit.ts';
import { treeWords } from '../../format/tree-words.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import type { ResolvedPlace } from '../../state/resolve-place.ts';
import { winterBars } from '../../state/winter-bars.ts';
import { coverRecord } from '../cover/cover-record.ts';
import { cautionsOf } from '../cover/measure-words.ts';
import { evidenceWords, winterWarnings } from '../place/place-words.ts';
import { spotDoes } from '../spot/spot-words.ts';
import { hoursOfWork, nightsToCover, type HourOfWork } from './cover-facts.ts';
import { hurtWinters, type HurtWinter } from './hurt-winters.ts';
import { sheetType, type SheetType } from './type-facts.ts';

/** What the sheet is told from. */
export interface SheetAsked {
  /** Ids of the types, in order; those the answer lacks are passed over. */
  readonly typeIds: readonly string[];
  /** The answer without a cover, spot included. */
  readonly bare: Ranking;
  /** The same under the cover, `null` without one. */
  readonly covered: Ranking | null;
  readonly place: ResolvedPlace;
  readonly stations: readonly PackStation[];
  readonly tree: TreeState;
  /** Ids of what counts of the cover. */
  readonly coverIds: readonly string[];
  readonly bareProtection: Protection;
  readonly coveredProtection: Protection;
  /** `null` while they are not at hand. */
  readonly life: LifeAnswer | null;
  readonly nights: KeptNights | null;
  readonly hemisphere: 'north' | 'south';
  readonly unit: TemperatureUnit;
}

/** The words of the sheet; pictures come beside them. */
export interface SheetTold {
  readonly place: string;
  readonly estimated: boolean;
  /** What was asked about: `Vigorous mature tree, in a container`. */
  readonly tree: string;
  /** Where the answers come from and how sure that is, a line each. */
  readonly evidence: readonly string[];
  /** What of the spot and the cover was left out, and why. */
  readonly problems: readonly string[];
  readonly types: readonly SheetType[];
  /** Horizon of the chances, winters. */
  readonly years: number;
  readonly spot: { readonly name: string; readonly does: string };
  readonly cover: {
    /** `no cover` where there is none. */
    readonly name: string;
    readonly none: boolean;
    readonly hours: readonly HourOfWork[];
    readonly nights: string;
    readonly cautions: readonly string[];
  };
  /** Winters by the first type's leaf hours, as they were without a cover. */
  readonly bars: readonly WinterBar[];
  /** Hours of those bars and what the air must reach for the first type's leaves, °C. */
  readonly hours: number;
  readonly thresholdC: number;
  readonly hurt: readonly HurtWinter[];
  /** How it was computed, a sentence each. */
  readonly method: readonly string[];
}

/** With more types than this each is told in fewer words: the table holds the rest. */
const FULL_TYPES_MAX = 2;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Everything the sheet says in words, of what was asked. `null` where none of the types has an answer. */
export function tellSheet(asked: SheetAsked): SheetTold | null {
  const { bare, covered, place, unit, hemisphere, coverIds } = asked;
  const estimated = isEstimated(bare);
  const pairs = asked.typeIds.flatMap((id): { bare: TypeAnswer; covered: TypeAnswer | null }[] => {
    const one = bare.types.find((type) => type.id === id);
    return one ? [{ bare: one, covered: covered?.types.find((type) => type.id === id) ?? null }] : [];
  });
  const leaf = pairs[0]?.bare.levels.find(({ level }) => level === 'leaf');
  if (!leaf) return null;
  const cover = coverWords(coverIds);
  const bars = winterBars(bare, leaf.hours, 'leaf');
  const { before, after } = treeWords(asked.tree);
  const standing = asked.bareProtection.spot;
  const record =
    asked.nights && cover !== NO_COVER
      ? coverRecord(asked.nights, bare, leaf, asked.bareProtection, asked.coveredProtection)
      : null;
  return {
    place: place.label,
    estimated,
    tree: capital(t`${before} tree${after.replace(/,$/, '')}`),
    evidence: evidence(asked, estimated),
    problems: (covered ?? bare).standing_problems.map((problem) => textInUnit(problem, unit)),
    types: pairs.map((pair) =>
      sheetType({
        ...pair,
        life: asked.life?.types.find(({ id }) => id === pair.bare.id) ?? null,
        ...{ cover, unit, brief: pairs.length > FULL_TYPES_MAX },
      }),
    ),
    years: leaf.chance_in_years.years,
    spot: {
      name: standing.words === '' ? t`In the open` : capital(standing.words),
      does:
        standing.words === ''
          ? t`Level, open ground, as the records have it.`
          : t`The spot ${spotDoes(standing.gain, unit)}.`,
    },
    cover: {
      name: cover,
      none: cover === NO_COVER,
      hours: cover === NO_COVER ? [] : hoursOfWork(coverIds, asked.tree.container, unit),
      nights: record ? nightsToCover(record, hemisphere) : '',
      cautions: cautionsOf(coverIds).map(({ caution }) => textInUnit(caution, unit)),
    },
    bars,
    hours: leaf.hours,
    thresholdC: reachedC(leaf),
    hurt: hurtWinters(
      pairs.map((pair) => pair.bare),
      bars,
    ),
    method: methodLines(asked, estimated),
  };
}

function evidence(
  { bare, place, stations, unit, hemisphere }: SheetAsked,
  estimated: boolean,
): readonly string[] {
  const { used, first, last } = bare.winters;
  const winters = recordWords({ complete: used, first, last }, hemisphere, estimated);
  const from = estimated
    ? t`${winters}, estimated from ${evidenceWords(bare, stations, unit)}; their level is good to about ${errorWords(bare.place.error_c ?? 0, unit)}, which the ranges hold.`
    : place.kind === 'station'
      ? t`${winters}, measured at this station.`
      : t`${winters}, measured at ${place.station.name}, ${formatDistance(place.distanceKm, unit)} away.`;
  return [from, ...(estimated ? heightMissing(bare.place) : []), ...winterWarnings(used, estimated)];
}

function methodLines({ covered, life }: SheetAsked, estimated: boolean): readonly string[] {
  return [
    t`A winter counts against a tree when, on any night, the air stayed at or below its threshold for so many hours without a break. Thresholds are those of the tree described; most kill figures are inferred, so life is told as a band.`,
    t`“About 1 winter in N” comes from a curve through all winters (generalised extreme values by L-moments); ranges are 90%, and nothing is told beyond twice the record.`,
    ...(covered
      ? [
          t`A spot and a cover add their degrees on calm and on windy nights; the figures are those at the centre of what they may add, and no gain is sure.`,
        ]
      : []),
    ...(life
      ? [
          t`Living after ten years: a tree planted in every winter on record and followed; cold is the only thing that kills it here.`,
        ]
      : []),
    ...(estimated ? [t`No thermometer stood here: hits are estimated too.`] : []),
  ];
}
