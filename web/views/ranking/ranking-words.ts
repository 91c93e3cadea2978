import { said, t } from '../../../analysis/language/t.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import { LEVEL_WORDS } from '../../format/level-words.ts';
import { namesInRow } from '../../format/type-names.ts';
import { rarerThan, type RankGroup } from '../../state/rank-rows.ts';

/** A loss this rare is one most people would plant with: once in twenty winters. */
const RARE_WINTERS = 20;
/** More names than this read as a list, not as a sentence. */
const NAMED = 3;

/** What the whole ranking comes to, in a sentence or two. */
export function rankingSentence(groups: readonly RankGroup[], level: Level): string {
  const all = groups.reduce((sum, { rows }) => sum + rows.length, 0);
  const rare = rarerThan(groups, RARE_WINTERS);
  const words = LEVEL_WORDS[level];
  if (rare.length === 0)
    return t`Of ${all} kinds, none ${words.one} here as rarely as 1 winter in ${RARE_WINTERS}.`;
  if (rare.length === all)
    return t`All ${all} kinds ${words.many} here no oftener than 1 winter in ${RARE_WINTERS}.`;
  const names = rare.slice(0, NAMED).map(({ type }) => said(type.name));
  const lose = rare.length === 1 ? words.one : words.many;
  return rare.length <= NAMED
    ? t`Of ${all} kinds, ${rare.length} ${lose} here no oftener than 1 winter in ${RARE_WINTERS}: ${namesInRow(names)}.`
    : t`Of ${all} kinds, ${rare.length} ${lose} here no oftener than 1 winter in ${RARE_WINTERS}, ${names[0]} among them.`;
}
