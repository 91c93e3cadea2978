import { NEARLY } from '../../../analysis/answer/choose-wishes.ts';
import { COVERS_TRIED, SPOTS_TRIED } from '../../../analysis/answer/choose-ways.ts';
import { ACTION_MARGIN_C } from '../../../analysis/cover/cover-nights.ts';
import { findMeasure } from '../../../analysis/cover/measures.ts';
import { t } from '../../../analysis/language/t.ts';
import { formatDifference } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

const covers = [...new Set(COVERS_TRIED.flat())].flatMap((id) => {
  const measure = findMeasure(id);
  return measure ? [lower(measure.name)] : [];
});

export interface ChoosingRule {
  readonly title: string;
  readonly words: string;
}

/** The rules of choosing in plain words, with the figures they run by. */
export const choosingRules = (unit: TemperatureUnit): readonly ChoosingRule[] => [
  {
    title: t`The colder reading counts.`,
    words: t`Trees that live and crops that are lost are told with hardening counted night by night, of trees planted in every winter on record. Where it says “as few as” or “range from”, that is the low end of a 90% range.`,
  },
  {
    title: t`The least that does it.`,
    words: t`Each kind is tried on the page’s spot as it is, under the page’s cover, then under others from the least work up, until one way meets every wish: ${covers.join('; ')}; cloths tied to the ground all round. Lights only once they are confirmed as safe, a garage only for a tree in a container. Heavy cloth on bare soil, with the graft banked, is the strongest of them. The list is a design choice.`,
  },
  {
    title: t`Nights.`,
    words: t`A cover goes on when the night comes within ${formatDifference(ACTION_MARGIN_C, unit).replace('+', '')} of taking the leaves of a mature tree, or its crop while it hangs, without it. A young tree needs it on more nights. What is done once a season takes no nights.`,
  },
  {
    title: t`Nearly.`,
    words: t`One wish missed and no more, by at most ${NEARLY.cropsInTen} crop in ten, ${NEARLY.treesInTen} tree in ten, ${NEARLY.years} year, or half again the nights (at least ${NEARLY.nightsAtLeast}). Then other spots are tried, ${SPOTS_TRIED.map(({ words }) => words).join(', ')}, and spot and cover together. Margins and spots are design choices.`,
  },
  {
    title: t`The order.`,
    words: t`More trees living first, then fewer crops lost, then fewer nights, by the figures as told to the tenth.`,
  },
  {
    title: t`The first crop.`,
    words: t`Years to the first crop are common practice among growers, without a source, and the same on any spot.`,
  },
  {
    title: t`Pairs.`,
    words: t`Of the first eight that meet your wishes: two that together give fruit in more months than the longer alone, and that don’t lose their crops only in the same winters. Fewest winters that take both first.`,
  },
];
