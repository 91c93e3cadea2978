import type { LevelAnswer, TypeAnswer } from '../../../analysis/answer/assessment.ts';
import type { TypeLife } from '../../../analysis/answer/life.ts';
import { t } from '../../../analysis/language/t.ts';
import { findType, type Basis } from '../../../analysis/tree/catalogue.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import {
  disagreementWords,
  levelWords,
  rangeWords,
  reachedC,
  sentenceEnd,
} from '../../format/answer-words.ts';
import { chanceWords } from '../../format/chance-words.ts';
import { LEVEL_WORDS } from '../../format/level-words.ts';
import { formatCount, formatHours, plural } from '../../format/numbers.ts';
import { formatTemperature } from '../../format/temperatures.ts';
import { shortTypeName } from '../../format/type-names.ts';
import type { TemperatureUnit } from '../../format/unit.ts';
import { shareWithRange } from '../life/life-words.ts';

/** Levels told on the sheet, and in what order. */
const SHEET_LEVELS: readonly Level[] = ['leaf', 'kill', 'fruit'];

/** Whose word a threshold is, in one word. */
const BASIS_WORD: Readonly<Record<Basis, string>> = {
  found: t`found`,
  memory: t`recalled`,
  inferred: t`inferred`,
  practice: t`practice`,
};

/** One answer as it is told in a cell: the period, and what stands under it. */
export interface SheetAnswer {
  readonly words: string;
  /** `range 1 in 8 to 1 in 20`; `''` where the words are a bound or a band already. */
  readonly range: string;
  /** Winters that did it, `9 of 61 winters`; `''` where the words tell that already. */
  readonly count: string;
  readonly chance: string;
}

/** One level of one type. */
export interface SheetRow {
  readonly level: Level;
  /** `loses leaves and twigs` */
  readonly harm: string;
  /** `24.0 °F for 4 h` */
  readonly cold: string;
  /** `found` */
  readonly basis: string;
  readonly bare: SheetAnswer;
  /** `null` without a cover. */
  readonly covered: SheetAnswer | null;
}

/** One type on the sheet. */
export interface SheetType {
  readonly id: string;
  readonly name: string;
  readonly botanical: string;
  /** Plain sentences: without a cover, with it, how long it lives where that is known, and where curve and count don't meet. */
  readonly sentences: readonly string[];
  readonly rows: readonly SheetRow[];
}

/** What a type's answers are put together from. */
export interface TypeAsked {
  readonly bare: TypeAnswer;
  /** The same under the cover, `null` without one. */
  readonly covered: TypeAnswer | null;
  /** `null` while the nights are not at hand. */
  readonly life: TypeLife | null;
  /** The cover in words. */
  readonly cover: string;
  readonly unit: TemperatureUnit;
  /** Only the answer as the tree would stand, since many types share the page. */
  readonly brief: boolean;
}

/** One type told for the sheet, in the words of the page's own views. */
export function sheetType({ bare, covered, life, cover, unit, brief }: TypeAsked): SheetType {
  const rows = SHEET_LEVELS.flatMap((level): SheetRow[] => {
    const one = levelOf(bare, level);
    if (!one) return [];
    const other = covered && levelOf(covered, level);
    const basis = findType(bare.id)?.thresholds[level].basis;
    return [
      {
        level,
        // Beside it the year tells of fruit picked in its season: what hangs on is another question.
        harm: level === 'fruit' ? t`loses fruit still hanging` : LEVEL_WORDS[level].one,
        cold: t`${formatTemperature(reachedC(one), unit, 1)} for ${formatHours(one.hours)}`,
        basis: basis === undefined ? '' : BASIS_WORD[basis],
        bare: told(one),
        covered: other ? told(other) : null,
      },
    ];
  });
  const [leaf, kill] = [levelOf(bare, 'leaf'), levelOf(bare, 'kill')];
  const sentences: string[] = [];
  if (leaf && kill && !(brief && covered)) sentences.push(openSentence(leaf, kill, covered !== null));
  const [coveredLeaf, coveredKill] = covered ? [levelOf(covered, 'leaf'), levelOf(covered, 'kill')] : [];
  if (coveredLeaf && coveredKill)
    sentences.push(coveredSentence(brief ? t`its cover` : cover, coveredLeaf, coveredKill));
  if (life) sentences.push(lifeSentence(life));
  sentences.push(...doubts(covered ?? bare));
  const name = shortTypeName(bare.name);
  return { id: bare.id, name, botanical: findType(bare.id)?.botanical ?? '', sentences, rows };
}

function levelOf(type: TypeAnswer, level: Level): LevelAnswer | undefined {
  return type.levels.find((entry) => entry.level === level);
}

function told(level: LevelAnswer): SheetAnswer {
  const { headline, counted } = level;
  const isTold = counted.winters === 0 || headline.basis === 'not seen';
  return {
    words: levelWords(level),
    range: rangeWords(level),
    count: isTold ? '' : t`${formatCount(counted.hits)} of ${plural(counted.winters, t`winter`, t`winters`)}`,
    chance: chanceWords(level),
  };
}

/** Ends with what the answer of the page ends with. */
function openSentence(leaf: LevelAnswer, kill: LevelAnswer, covers: boolean): string {
  const [leafEnd, killEnd] = [sentenceEnd(leaf).main, sentenceEnd(kill).main];
  return covers
    ? t`Without a cover it would have ${LEVEL_WORDS.leaf.took} ${leafEnd}, and been killed down to its graft ${killEnd}.`
    : t`It would have ${LEVEL_WORDS.leaf.took} ${leafEnd}, and been killed down to its graft ${killEnd}.`;
}

function coveredSentence(cover: string, leaf: LevelAnswer, kill: LevelAnswer): string {
  return t`Under ${cover}: leaves and twigs ${sentenceEnd(leaf).main}, life ${sentenceEnd(kill).main}.`;
}

/** Levels whose curve lies outside what the count allows, in the words that stand under the page's answer. */
function doubts(type: TypeAnswer): string[] {
  return SHEET_LEVELS.flatMap((level) => {
    const one = levelOf(type, level);
    const words = one ? disagreementWords(one) : '';
    return words === '' ? [] : [t`${LEVEL_WORDS[level].label}: ${words}`];
  });
}

/** Both readings, the colder first. */
function lifeSentence({ night_by_night: colder, hardened }: TypeLife): string {
  const [first, second] = [colder.ten_years, hardened.ten_years].map(shareWithRange);
  return first === second
    ? t`Planted here, living after ten years: ${first}.`
    : t`Planted here, living after ten years: ${first}; had every tree been hardened, ${second}.`;
}
