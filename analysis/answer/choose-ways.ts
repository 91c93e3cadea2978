import { WRONG_CHOICES, type CoverId } from '../cover/cover-ids.ts';
import { findMeasure, worksAtNight } from '../cover/measures.ts';
import { countingIds, refusals } from '../cover/refusals.ts';
import { t } from '../language/t.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import type { Way } from './choosing.ts';
import { gainsOnSpot } from './protection.ts';
import { IN_THE_OPEN } from './standing-spot.ts';

/**
 * Covers tried for a buyer who chose none of them, least work first (design choice). Of covers of the same work the one that
 * gains more stands for both. Sprinklers and houses are left out: they are built, and water that stops part-way is worse than none.
 */
export const COVERS_TRIED: readonly (readonly CoverId[])[] = [
  ['bare-soil'],
  ['soil-bank'],
  ['garage'],
  ['cloth-medium', 'tied'],
  ['cloth-heavy', 'tied'],
  ['bare-soil', 'cloth-heavy', 'tied'],
  ['bare-soil', 'cloth-heavy', 'soil-bank', 'tied'],
  ['bare-soil', 'cloth-heavy', 'lights', 'soil-bank', 'tied', 'lights-confirmed'],
];

/**
 * Kinds of spot that many yards have and that leave a tree its sun, the mildest last. Hills and shores are where the place
 * lies, not a choice within it.
 */
export const SPOTS_TRIED = [
  { id: 'paving-edge', words: t`at the edge of a paved court or driveway` },
  { id: 'out-of-wind', words: t`on the sunny side, out of the cold wind` },
  { id: 'heated-wall', words: t`at a wall of a heated house` },
  { id: 'south-wall-heated', words: t`at a sun-facing masonry wall of a heated house` },
] as const;

/** What the page has, so far as it bears on what is tried. */
export interface OnPage {
  /** Named spot chosen on the page; `null`: in the open, or a point of a yard. */
  readonly spotId: string | null;
  /** Covers chosen there; what is refused or should not be done is left out here. */
  readonly covers: readonly CoverId[];
  readonly container: boolean;
}

/** Covers to be tried together, and what they gain in the open. */
export interface CoverTried {
  readonly ids: readonly CoverId[];
  readonly gains: LevelGainSpreads;
  /** Something of it is put on, or the tree brought in, on each cold night. */
  readonly nightWork: boolean;
}

/** Covers to try on one spot in order of preference: none, the page's own, then the rest by work, the strongest last. */
export function coversTried({ covers, container }: OnPage): readonly CoverTried[] {
  const own = countingIds(covers, { container }).filter(
    (id) => !WRONG_CHOICES.some((wrong) => wrong.id === id),
  );
  const offered = COVERS_TRIED.filter(
    (ids) =>
      (own.includes('lights-confirmed') || !ids.includes('lights')) &&
      refusals(ids, { container }).length === 0 &&
      !sameCovers(ids, own),
  );
  return [[], ...(own.some((id) => findMeasure(id)) ? [own] : []), ...offered].map((ids) => ({
    ids,
    gains: gainsOnSpot(IN_THE_OPEN, ids),
    nightWork: worksAtNight(ids),
  }));
}

/** Spots to try beside the page's own. */
export function spotsTried({ spotId }: OnPage): readonly string[] {
  return SPOTS_TRIED.map(({ id }) => id).filter((id) => id !== spotId);
}

/** A way in words: `at a wall of a heated house, with medium frost cloth tied to the ground all round`. */
export function wayWords({ spotId, covers }: Way): string {
  const spot = SPOTS_TRIED.find(({ id }) => id === spotId)?.words ?? (spotId === null ? '' : t`at ${spotId}`);
  const tied = covers.includes('tied');
  const names = covers.flatMap((id) => {
    const measure = findMeasure(id);
    if (!measure) return [];
    const name = measure.name.charAt(0).toLowerCase() + measure.name.slice(1);
    return tied && measure.tieable ? [t`${name} tied to the ground all round`] : [name];
  });
  // Names have commas in them.
  const list = names.length < 2 ? names.join() : t`${names.slice(0, -1).join('; ')}; and ${names.at(-1)!}`;
  const cover = list === '' ? '' : t`with ${list}`;
  const parts = [spot, cover].filter((part) => part !== '');
  return parts.length === 0 ? t`as it stands, without a cover` : parts.join(', ');
}

function sameCovers(a: readonly CoverId[], b: readonly CoverId[]): boolean {
  return a.length === b.length && a.every((id) => b.includes(id));
}
