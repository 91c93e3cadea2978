import { t } from '../language/t.ts';
import type { TreeState } from '../tree/penalties.ts';
import type { CoverId } from './cover-ids.ts';
import { checkCoverIds, findMeasure } from './measures.ts';

/** Whether the tree stands in a pot, where that is known. */
export type Planted = Pick<TreeState, 'container'>;

/** Whether a choice is among those made. */
type Has = (...ids: readonly CoverId[]) => boolean;

interface Rule {
  readonly applies: (hasAny: Has, tree: Planted | undefined) => boolean;
  readonly sentence: string;
}

interface Refusal extends Rule {
  /** What then counts for nothing. */
  readonly drops: readonly CoverId[];
}

const CLOTHS: readonly CoverId[] = ['cloth-light', 'cloth-medium', 'cloth-heavy', 'sheet'];
const WATER: readonly CoverId[] = ['sprinkler-low', 'sprinkler-raised', 'wrap-sprinkler'];
const CANOPY_COVERS: readonly CoverId[] = [...CLOTHS, 'plastic-house'];
const SOIL: readonly CoverId[] = ['watered-soil', 'bare-soil'];

/** In the order of danger: what can kill a person, then what hurts the tree, then what does nothing. */
const REFUSALS: readonly Refusal[] = [
  {
    applies: (has) => has('open-flame'),
    sentence: t`No heater, charcoal or flame under a cover, in a garage or in a closed house: carbon monoxide and fire.`,
    drops: [],
  },
  {
    applies: (has) => has('lights') && has(...WATER, 'overhead-sprinkler'),
    sentence: t`No lights in a tree that is being sprinkled: water and electricity. Choose one of the two.`,
    drops: ['lights'],
  },
  {
    applies: (has) => has('lights') && has('sheet'),
    sentence: t`No lights or other heat under a sheet or blanket: it burns. Use frost cloth, clear of every bulb, or leave the lights out.`,
    drops: ['lights'],
  },
  {
    applies: (has) => has('lights') && !has('lights-confirmed'),
    sentence: t`Lights count only once confirmed: outdoor-rated, on an outlet with ground-fault protection, clear of cloth, leaves and mulch.`,
    drops: ['lights'],
  },
  {
    applies: (has) => has('overhead-sprinkler'),
    sentence: t`No sprinkler over the crown: the ice breaks limbs, and wet leaves chill below the air. A microsprinkler stays low.`,
    drops: [],
  },
  {
    applies: (has) => has('plastic-on-leaves'),
    sentence: t`No plastic on the leaves: what it touches is hurt, and in the sun the tree cooks. Cloth first; plastic over it only in wind.`,
    drops: CANOPY_COVERS,
  },
  {
    applies: (has) => has('short-cover'),
    sentence: t`A cover that ends above the ground holds 0 to 2 °F on a calm night and nothing in wind. Let it down to the ground all round.`,
    drops: CANOPY_COVERS,
  },
  {
    applies: (has) => has('led-lights'),
    sentence: t`LED strings give no useful heat: they gain nothing. Only old-style bulbs do.`,
    drops: [],
  },
  {
    applies: (has) => has('mulch-left') && has(...SOIL),
    sentence: t`Mulch left under the tree keeps the soil from warming the air, so warm or moist soil cannot be counted on. Rake the mulch back.`,
    drops: SOIL,
  },
  {
    applies: (has, tree) => has('garage') && tree?.container === false,
    sentence: t`A garage is for a tree in a pot; this one stands in the ground.`,
    drops: ['garage'],
  },
];

const NOTES: readonly Rule[] = [
  {
    applies: (has) => has('garage') && has(...CANOPY_COVERS, 'lights', 'watered-soil', 'bare-soil', ...WATER),
    sentence: t`Indoors nothing else is needed: the garage counts alone, and the spot in the yard no longer matters.`,
  },
  {
    applies: (has) =>
      has('lights') && has('lights-confirmed') && has('cloth-light', 'cloth-medium', 'cloth-heavy'),
    sentence: t`Lights under frost cloth are held to what was measured together, 7 to 8 °F calm and 3 to 4 °F windy, or to the cloth alone where that is more.`,
  },
  {
    applies: (has) => has('bare-soil') && has('watered-soil'),
    sentence: t`Bare moist soil is watered already: the larger of the two counts.`,
  },
  {
    applies: (has) => has(...CLOTHS) && !has('tied'),
    sentence: t`Not tied to the ground: in wind over about 10 mph (4.5 m/s) the cover is taken to gain nothing.`,
  },
  {
    applies: (has) => has('tied') && !has(...CLOTHS),
    sentence: t`Nothing chosen can be tied down: "tied" changes nothing.`,
  },
  {
    applies: (has) => has('mulch-left') && !has(...SOIL),
    sentence: t`Mulch left under the tree makes the air of its canopy 0.9 to 2.2 °F colder on calm nights. Draw it in the yard to have it counted.`,
  },
  {
    applies: (has) => has('soil-bank', 'trunk-wrap', 'wrap-sprinkler'),
    sentence: t`Banks and wraps save the trunk and the graft only: they count against losing the whole tree, not against losing fruit, leaves or limbs.`,
  },
];

/**
 * Why this choice is refused, one sentence a reason, the most dangerous first; empty when it is not.
 * @param tree when given, a garage is refused for a tree in the ground.
 * @throws InputError for an unknown id
 */
export function refusals(ids: readonly string[], tree?: Planted): string[] {
  const has = among(checkCoverIds(ids));
  return REFUSALS.filter(({ applies }) => applies(has, tree)).map(({ sentence }) => sentence);
}

/** What is worth knowing of a choice that is allowed. @throws InputError for an unknown id */
export function coverNotes(ids: readonly string[]): string[] {
  const known = checkCoverIds(ids);
  const has = among(known);
  const covers = known.filter((id) => findMeasure(id)?.group === 'cover');
  const two = covers.length > 1 ? [t`Of several covers over one another only the largest counts.`] : [];
  return [...two, ...NOTES.filter(({ applies }) => applies(has, undefined)).map(({ sentence }) => sentence)];
}

/**
 * What still counts of a choice while something in it is refused: what a refusal makes worthless is left out.
 * @throws InputError for an unknown id
 */
export function countingIds(ids: readonly string[], tree?: Planted): readonly CoverId[] {
  const known = checkCoverIds(ids);
  const has = among(known);
  const dropped = new Set(REFUSALS.filter(({ applies }) => applies(has, tree)).flatMap(({ drops }) => drops));
  return known.filter((id) => !dropped.has(id));
}

function among(known: readonly CoverId[]): Has {
  return (...ids) => ids.some((id) => known.includes(id));
}
