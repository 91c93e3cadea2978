import { typeName } from '../../analysis/tree/type-names.ts';
import type { Level } from '../../analysis/tree/levels.ts';
import type { ProtectionTexts } from '../../analysis/answer/protection.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';
import type { MapShows, MapWinters } from './chosen.ts';
import type { SurfaceAsk } from './surface-state.svelte.ts';

/** What the map's question follows from. */
export interface MapChoice {
  readonly packUrl: string;
  readonly tree: TreeState;
  readonly protection: ProtectionTexts | null;
  readonly typeId: string;
  readonly level: Level;
  readonly shows: MapShows;
  readonly againstId: string;
  readonly winters: MapWinters;
}

/** Where a tree could be grown is a question of its life; everything else is about the level chosen. */
export function mapLevel(shows: MapShows, level: Level): Level {
  return shows === 'where' ? 'kill' : level;
}

/** The type held against the one shown: the reader's, or one of the page's where that is none, unknown or the same. */
export function againstOf(chosen: string | null, typeId: string): string {
  if (chosen !== null && chosen !== typeId && typeName(chosen)) return chosen;
  return typeId === 'meyer_lemon' ? 'satsuma_owari' : 'meyer_lemon';
}

/**
 * The surfaces a choice needs. The difference of winters is always the last 30 against all; a cover is held against none on
 * the same spot, and without one the map tells how often.
 */
export function surfaceAsk(choice: MapChoice): SurfaceAsk {
  const { packUrl, tree, protection, typeId, againstId } = choice;
  const shows = choice.shows === 'cover' && !protection?.cover ? 'periods' : choice.shows;
  const level = mapLevel(shows, choice.level);
  const first = { packUrl, tree, protection, typeId, level, winters: choice.winters };
  if (shows === 'types') return { shows, first, second: { ...first, typeId: againstId } };
  if (shows === 'recent')
    return { shows, first: { ...first, winters: 'last30' }, second: { ...first, winters: 'all' } };
  if (shows === 'cover' && protection)
    return { shows, first, second: { ...first, protection: { ...protection, cover: null } } };
  return { shows, first, second: null };
}
