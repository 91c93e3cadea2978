import type { AskedOfCustomer, Moved } from '../../../../analysis/answer/advice-here.ts';
import {
  YOUNG_YEARS,
  type CustomerAnswers,
  type Unknown,
} from '../../../../analysis/answer/advice-customer.ts';
import type { OpenAdvice } from '../../../../analysis/answer/advice.ts';
import { sayList } from '../../../../analysis/language/lists.ts';
import { said, t } from '../../../../analysis/language/t.ts';
import { typeName } from '../../../../analysis/tree/type-names.ts';
import { formatCount } from '../../../format/numbers.ts';
import { shortTypeName } from '../../../format/type-names.ts';
import { CLASS_TITLES } from './advice-words.ts';

/** The questions as they are asked. */
export const QUESTIONS: Readonly<Record<Unknown, string>> = {
  home: t`Is somebody at home on cold nights, to cover the tree or carry it in?`,
  wall: t`Is there a place for it right at a wall of the heated house?`,
  young: t`Is it planted young, within the last ${YOUNG_YEARS} years?`,
  stands: t`In the ground, or in a pot?`,
  fruit: t`Will fruit still hang on it when the cold comes?`,
};

/** The answers on the buttons. */
export function answerWords(unknown: Unknown, value: string): string {
  if (unknown !== 'stands') return value === 'yes' ? t`Yes` : t`No`;
  return { either: t`Either will do`, ground: t`In the ground only`, pot: t`In a pot only` }[value] ?? value;
}

/** What was answered, as a sentence in the list of answers. */
function answeredWords(unknown: Unknown, value: string): string {
  switch (unknown) {
    case 'home':
      return value === 'no' ? t`Nobody at home on cold nights.` : t`Somebody is at home on cold nights.`;
    case 'wall':
      return value === 'yes'
        ? t`It stands at a wall of the heated house.`
        : t`No wall of a heated house for it.`;
    case 'young':
      return value === 'yes'
        ? t`It is planted young: figures are those of its first ${YOUNG_YEARS} years.`
        : t`It is no longer young.`;
    case 'stands':
      return (
        { ground: t`In the ground only.`, pot: t`In a pot only.` }[value] ?? t`Ground or pot, either will do.`
      );
    case 'fruit':
      return value === 'yes'
        ? t`Fruit hangs into the cold, and is to be saved as well.`
        : t`The fruit is in before the cold.`;
  }
}

/** Answers given, each with its sentence. */
export function answersGiven(
  answers: CustomerAnswers,
): readonly { readonly unknown: Unknown; readonly words: string }[] {
  return (Object.entries(answers) as [Unknown, string][]).map(([unknown, value]) => ({
    unknown,
    words: answeredWords(unknown, value),
  }));
}

/** What an answer changes: `7 kinds change: 5 to “Not here” (Meyer lemon and 4 more), 2 to ...`. */
export function movesWords({ assumed, moved }: AskedOfCustomer['options'][number]): string {
  if (assumed) return t`taken for granted now`;
  if (moved.length === 0) return t`changes nothing here`;
  const to = new Map<OpenAdvice, Moved[]>();
  for (const one of moved) if (one.to) to.set(one.to, [...(to.get(one.to) ?? []), one]);
  const parts = [...to].map(
    ([advice, all]) => t`${formatCount(all.length)} to “${CLASS_TITLES[advice]}” (${named(all)})`,
  );
  const list = sayList(parts);
  return moved.length === 1 ? t`moves 1 kind: ${list}` : t`moves ${formatCount(moved.length)} kinds: ${list}`;
}

function named(moved: readonly Moved[]): string {
  const name = ({ typeId }: Moved): string => shortTypeName(said(typeName(typeId) ?? typeId));
  if (moved.length < 3) return sayList(moved.map(name));
  return t`${name(moved[0])} and ${formatCount(moved.length - 1)} more`;
}
