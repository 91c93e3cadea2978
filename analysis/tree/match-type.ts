import { CITRUS_TYPES, type CitrusType } from './catalogue.ts';
import spellings from './type-spellings.json';

/** What a name in somebody's list means. */
export type TypeMatch =
  | { readonly type: CitrusType }
  /** Several could be meant, or none: those that come nearest, at most four. */
  | { readonly type: null; readonly near: readonly CitrusType[] };

interface Spelling {
  readonly type: CitrusType;
  readonly words: readonly string[];
  /** Words in order, so that "lemon meyer" is "Meyer lemon". */
  readonly sorted: string;
}

/** Words that tell nothing of which type it is. */
const FILLERS = new Set([
  'tree',
  'trees',
  'the',
  'de',
  'del',
  'el',
  'la',
  'arbol',
  'planta',
  'citrus',
  'type',
  'tipo',
  'variety',
  'variedad',
]);
const NEAR_TOLD = 4;
const LONGEST_NAME = 120;
const WORDS_MOST = 20;

const SPELLINGS: readonly Spelling[] = CITRUS_TYPES.flatMap((type) =>
  [
    type.id.replaceAll('_', ' '),
    type.name,
    type.name.replace(/\([^)]*\)/g, ' '),
    ...(spellings as Readonly<Record<string, readonly string[]>>)[type.id],
  ].map((text) => {
    const words = wordsOf(text);
    return { type, words, sorted: sortedText(words) };
  }),
);

/**
 * The type that a name means: an id, a name of the catalogue, or a spelling of the trade, English or Spanish, whatever its
 * case, accents, order of words and what else stands with it (`Meyer lemon, improved, 3 gal`). Names of several types
 * (`kumquat`, `pomelo`) mean none.
 */
export function matchType(text: string): TypeMatch {
  const words = wordsOf(text.slice(0, LONGEST_NAME));
  const exact = only(SPELLINGS.filter(({ sorted }) => sorted === sortedText(words)));
  if (exact.length === 1) return { type: exact[0] };
  const held = SPELLINGS.filter((spelling) => spelling.words.every((word) => words.includes(word)));
  const most = Math.max(0, ...held.map((spelling) => spelling.words.length));
  const best = only(held.filter((spelling) => spelling.words.length === most));
  if (exact.length === 0 && best.length === 1) return { type: best[0] };
  const near = exact.length > 0 ? exact : best.length > 0 ? best : nearest(words);
  return { type: null, near: near.slice(0, NEAR_TOLD) };
}

/** Types that share a word, those that share most first. */
function nearest(words: readonly string[]): readonly CitrusType[] {
  const shared = new Map<CitrusType, number>();
  for (const { type, words: own } of SPELLINGS) {
    const count = own.filter((word) => words.includes(word)).length;
    if (count > (shared.get(type) ?? 0)) shared.set(type, count);
  }
  return [...shared].sort((a, b) => b[1] - a[1]).map(([type]) => type);
}

function only(found: readonly Spelling[]): readonly CitrusType[] {
  return [...new Set(found.map(({ type }) => type))];
}

function sortedText(words: readonly string[]): string {
  return [...words].sort().join(' ');
}

function wordsOf(text: string): readonly string[] {
  const plain = text
    .normalize('NFD')
    .replace(/[\p{M}'’]/gu, '')
    .toLowerCase();
  const words = plain.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '' && !FILLERS.has(word));
  return [...new Set(words)].slice(0, WORDS_MOST);
}
