import { t } from '../language/t.ts';
import { countingIds } from './refusals.ts';

/** One thing to do. */
export interface TimetableEntry {
  readonly when: string;
  readonly what: string;
  /** Labels of the trees it is for. */
  readonly trees: readonly string[];
}

export interface TreeToGuard {
  readonly label: string;
  /** Ids of its cover. */
  readonly cover: readonly string[];
  readonly container: boolean;
}

interface Step {
  readonly when: string;
  readonly what: string;
  /** Any of these ids calls for it. */
  readonly ids?: readonly string[];
  readonly only?: (tree: TreeToGuard, kind: 'calm' | 'windy') => boolean;
}

const CLOTHS = ['cloth-light', 'cloth-medium', 'cloth-heavy', 'sheet'];
const WATER = ['sprinkler-low', 'sprinkler-raised', 'wrap-sprinkler'];

/** In the order of the day. */
const STEPS: readonly Step[] = [
  {
    when: t`Morning before`,
    what: t`Rake mulch, leaves and tall grass back from under the tree, so that the sun warms the soil.`,
    only: ({ container, cover }, kind) => kind === 'calm' && !container && !cover.includes('garage'),
  },
  { when: t`Morning before`, what: t`Soak the soil under the tree where it is dry.`, ids: ['watered-soil'] },
  { when: t`Morning before`, what: t`Water the pot.`, only: ({ container }) => container },
  {
    when: t`By early afternoon`,
    what: t`Check strings, plugs and the ground-fault outlet while it is dry and light; bulbs clear of cloth, leaves and mulch.`,
    ids: ['lights'],
  },
  {
    when: t`By early afternoon`,
    what: t`Run the sprinkler once and look that every nozzle turns.`,
    ids: WATER,
  },
  {
    when: t`By mid afternoon`,
    what: t`Wrap the trunk from the ground to above the graft, if it is not wrapped yet.`,
    ids: ['trunk-wrap', 'wrap-sprinkler'],
  },
  {
    when: t`By mid afternoon`,
    what: t`Heap clean soil over the graft, if it is not banked yet.`,
    ids: ['soil-bank'],
  },
  { when: t`Before sunset`, what: t`Carry or roll the pot indoors, with help.`, ids: ['garage'] },
  { when: t`Before sunset`, what: t`Close the house.`, ids: ['plastic-house'] },
  {
    when: t`Late, just before sunset`,
    what: t`Put the cover on: down to the ground all round, clear of the leaves. Later keeps more of the sun in the soil.`,
    ids: CLOTHS,
  },
  {
    when: t`Late, just before sunset`,
    what: t`Tie and weigh the cover down on every side.`,
    only: ({ cover }) => cover.includes('tied') && CLOTHS.some((id) => cover.includes(id)),
  },
  {
    when: t`Late, just before sunset`,
    what: t`It will be windy: this cover is not tied down, so count on nothing from it. Tie it all round or leave it off.`,
    only: ({ cover }, kind) =>
      kind === 'windy' && !cover.includes('tied') && CLOTHS.some((id) => cover.includes(id)),
  },
  { when: t`At dusk`, what: t`Switch the lights on.`, ids: ['lights'] },
  {
    when: t`Before it falls to 32 °F (0 °C)`,
    what: t`Start the water, earlier in dry air, and keep it on: a stop part-way is worse than no water.`,
    ids: WATER,
  },
  {
    when: t`Next day, above freezing`,
    what: t`Stop the water only when the ice falls freely.`,
    ids: WATER,
  },
  {
    when: t`Next day, above freezing`,
    what: t`Take the cover off or open it to the sun; frost cloth may stay a few days of cold.`,
    ids: CLOTHS,
  },
  { when: t`Next day, above freezing`, what: t`Switch the lights off.`, ids: ['lights'] },
  {
    when: t`Next day, above freezing`,
    what: t`Open the house before the sun heats it.`,
    ids: ['plastic-house'],
  },
  { when: t`Next day, above freezing`, what: t`Bring the pot out again.`, ids: ['garage'] },
];

/**
 * What to do through the day and the morning after, in its order, for trees in danger. Refused measures call for nothing.
 * @throws InputError for an unknown id
 */
export function timetable(trees: readonly TreeToGuard[], kind: 'calm' | 'windy'): TimetableEntry[] {
  const guarded = trees.map((tree) => ({
    ...tree,
    cover: countingIds(tree.cover, tree) as readonly string[],
  }));
  return STEPS.flatMap(({ when, what, ids, only }) => {
    const its = guarded.filter(
      (tree) => (ids?.some((id) => tree.cover.includes(id)) ?? true) && (only?.(tree, kind) ?? true),
    );
    return its.length === 0 ? [] : [{ when, what, trees: its.map(({ label }) => label) }];
  });
}
