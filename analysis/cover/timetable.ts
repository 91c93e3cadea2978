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
    when: 'Morning before',
    what: 'Rake mulch, leaves and tall grass back from under the tree, so that the sun warms the soil.',
    only: ({ container, cover }, kind) => kind === 'calm' && !container && !cover.includes('garage'),
  },
  { when: 'Morning before', what: 'Soak the soil under the tree where it is dry.', ids: ['watered-soil'] },
  { when: 'Morning before', what: 'Water the pot.', only: ({ container }) => container },
  {
    when: 'By early afternoon',
    what: 'Check strings, plugs and the ground-fault outlet while it is dry and light; bulbs clear of cloth, leaves and mulch.',
    ids: ['lights'],
  },
  {
    when: 'By early afternoon',
    what: 'Run the sprinkler once and look that every nozzle turns.',
    ids: WATER,
  },
  {
    when: 'By mid afternoon',
    what: 'Wrap the trunk from the ground to above the graft, if it is not wrapped yet.',
    ids: ['trunk-wrap', 'wrap-sprinkler'],
  },
  {
    when: 'By mid afternoon',
    what: 'Heap clean soil over the graft, if it is not banked yet.',
    ids: ['soil-bank'],
  },
  { when: 'Before sunset', what: 'Carry or roll the pot indoors, with help.', ids: ['garage'] },
  { when: 'Before sunset', what: 'Close the house.', ids: ['plastic-house'] },
  {
    when: 'Late, just before sunset',
    what: 'Put the cover on: down to the ground all round, clear of the leaves. Later keeps more of the sun in the soil.',
    ids: CLOTHS,
  },
  {
    when: 'Late, just before sunset',
    what: 'Tie and weigh the cover down on every side.',
    only: ({ cover }) => cover.includes('tied') && CLOTHS.some((id) => cover.includes(id)),
  },
  {
    when: 'Late, just before sunset',
    what: 'It will be windy: this cover is not tied down, so count on nothing from it. Tie it all round or leave it off.',
    only: ({ cover }, kind) =>
      kind === 'windy' && !cover.includes('tied') && CLOTHS.some((id) => cover.includes(id)),
  },
  { when: 'At dusk', what: 'Switch the lights on.', ids: ['lights'] },
  {
    when: 'Before it falls to 32 °F (0 °C)',
    what: 'Start the water, earlier in dry air, and keep it on: a stop part-way is worse than no water.',
    ids: WATER,
  },
  {
    when: 'Next day, above freezing',
    what: 'Stop the water only when the ice falls freely.',
    ids: WATER,
  },
  {
    when: 'Next day, above freezing',
    what: 'Take the cover off or open it to the sun; frost cloth may stay a few days of cold.',
    ids: CLOTHS,
  },
  { when: 'Next day, above freezing', what: 'Switch the lights off.', ids: ['lights'] },
  {
    when: 'Next day, above freezing',
    what: 'Open the house before the sun heats it.',
    ids: ['plastic-house'],
  },
  { when: 'Next day, above freezing', what: 'Bring the pot out again.', ids: ['garage'] },
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
