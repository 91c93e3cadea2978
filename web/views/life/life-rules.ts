import type { Planting } from '../../../analysis/answer/life.ts';
import { YEARS_TO_BEAR_AGAIN } from '../../../analysis/tree/bearing.ts';
import { bloomWindow, NEW_LEAVES_MATURE_DAYS } from '../../../analysis/tree/bloom.ts';
import type { Basis, CitrusType } from '../../../analysis/tree/catalogue.ts';
import { ACTION_MARGIN_C } from '../../../analysis/cover/cover-nights.ts';
import { FLUSH_HOURS, FLUSH_LIMIT_C, WARM_SPELL_NIGHTS } from '../../../analysis/tree/flush.ts';
import { FULL_COOL_HOURS, LOST_A_WARM_NIGHT } from '../../../analysis/tree/hardening.ts';
import { hangsUntil, harvestWindow } from '../../../analysis/tree/harvest.ts';
import { sayMonthDay } from '../../../analysis/language/dates.ts';
import { t } from '../../../analysis/language/t.ts';
import { MATURE_TREE, penaltiesAt, totalPenaltyC, type TreeState } from '../../../analysis/tree/penalties.ts';
import { seasonDayText } from '../../../analysis/winter/season-day.ts';
import { formatHours, formatPercent } from '../../format/numbers.ts';
import { formatDifference, formatSize, formatTemperature } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

type Hemisphere = 'north' | 'south';

/** One rule of the reckoning and what it rests on. */
export interface Rule {
  readonly rule: string;
  /** Source keys, or words for what has none. */
  readonly basis: string;
}

const PRACTICE = t`practice: common practice, no source`;
const CHOICE = t`design choice`;

/** `15 April`. */
function seasonDayWords(day: number, hemisphere: Hemisphere): string {
  const [month, ofMonth] = seasonDayText(day, hemisphere).split('-').map(Number);
  return sayMonthDay(month, ofMonth);
}

function basisWords(basis: Basis): string {
  return {
    found: t`found in its sources`,
    memory: t`recalled, no source at hand`,
    inferred: t`inferred`,
    practice: PRACTICE,
  }[basis];
}

/** The rules for one type, planted and picked as chosen. */
export function lifeRules(
  type: CitrusType,
  planting: Planting,
  hemisphere: Hemisphere,
  unit: TemperatureUnit,
): readonly Rule[] {
  const moved = (state: Partial<TreeState>): string =>
    formatDifference(totalPenaltyC(penaltiesAt('kill', type, { ...MATURE_TREE, ...state })), unit);
  const day = (of: number): string => seasonDayWords(of, hemisphere);
  const bloom = bloomWindow(planting.calendar, hemisphere);
  return [
    {
      rule: t`A tree is planted before every complete winter and meets the winters that followed, one after another. It ends when it is killed to the graft, or with the record.`,
      basis: t`the record`,
    },
    {
      rule: t`A young tree is hurt at warmer levels: ${moved({ ageYears: 2 })} in its first two years, ${moved({ ageYears: 3 })} in its third, ${moved({ ageYears: 5 })} in its fourth and fifth. It counts as ${planting.startAgeYears} in its first winter.`,
      basis: PRACTICE,
    },
    {
      rule: t`Hardening counted night by night: full after ${FULL_COOL_HOURS} hours at or below ${formatTemperature(10, unit)} in the last 500 (S19), gained no faster than those hours come, and a warm night takes back ${formatPercent(LOST_A_WARM_NIGHT * 100)} of it (S23 for the direction). Without any, the levels of leaf, wood and life are ${moved({ hardened: false })} warmer. This and youth never add up: the larger counts. Where cool hours are not known the tree counts as not hardened.`,
      basis: t`S19, S23, S04, S05; the rate of loss is a design choice`,
    },
    {
      rule: t`Bloom and new growth are lost at ${formatTemperature(FLUSH_LIMIT_C, unit)} (S05) held for ${formatHours(FLUSH_HOURS)}, from ${day(bloom.fromDay)} to ${day(bloom.toDay)} (practice) and for ${NEW_LEAVES_MATURE_DAYS} days after ${WARM_SPELL_NIGHTS} warm nights in a row in the cold months. A crop counts as lost with its bloom in one of the two counts only.`,
      basis: t`S05, practice; warm spells and hours are a design choice`,
    },
    fruitRule(type, planting, hemisphere),
    {
      rule: t`A tree with its crop still on it is hurt at warmer levels: ${moved({ fruitLoad: true })} for leaf, wood and life.`,
      basis: t`S12 for the effect; the figure is practice`,
    },
    {
      rule:
        YEARS_TO_BEAR_AGAIN.leaf === 1
          ? t`Leaves lost: the next crop is missing. Limbs lost: no crop for ${YEARS_TO_BEAR_AGAIN.wood} winters, and the tree is tender as in its third year meanwhile.`
          : t`Leaves lost: the next crop is missing for ${YEARS_TO_BEAR_AGAIN.leaf} winters. Limbs lost: no crop for ${YEARS_TO_BEAR_AGAIN.wood} winters, and the tree is tender as in its third year meanwhile.`,
      basis: PRACTICE,
    },
    {
      rule: t`Under a cover, a night counts as covered when it comes within ${formatSize(ACTION_MARGIN_C, unit)} of taking the leaves, or the crop while it hangs, without it, since forecasts err.`,
      basis: PRACTICE,
    },
    {
      rule: t`Losses seen in a winter that isn’t complete count for the tree, but no share is worked out from such a winter; a tree killed in one has a fate that is not known.`,
      basis: CHOICE,
    },
    {
      rule: t`Shares: every planting is followed as far as the record goes and then on from its first winter, round it, so that all are followed as far and every winter is met at every age. The Kaplan-Meier estimate, which takes the record as it runs, stands in the table. The ranges come from putting whole winters in new order, block by block, and planting anew in every one, since plantings share winters. A winter worse than any on record is given its chance, so nothing reads as certain: as often as none in so many winters allows, or less where the curve through the winters makes a kill rarer than once in twice the record.`,
      basis: t`published methods; the worse winter is a design choice`,
    },
  ];
}

function fruitRule(type: CitrusType, planting: Planting, hemisphere: Hemisphere): Rule {
  const window = harvestWindow(type, planting.calendar, hemisphere);
  const until = hangsUntil(window, planting.picking);
  const [from, to] = [window.fromDay, window.toDay].map((day) => seasonDayWords(day, hemisphere));
  return {
    rule:
      until === null
        ? t`The fruit of this kind is ripe from ${from} to ${to}, and some fruit hangs in every cold month, so every night counts.`
        : t`The fruit of this kind is ripe from ${from} to ${to}, and as picked here it hangs until ${seasonDayWords(until, hemisphere)}; later nights take no fruit.`,
    basis: t`months ${basisWords(type.harvest.basis)}`,
  };
}
