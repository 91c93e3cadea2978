import {
  CUSTOMER_ANSWERS,
  UNKNOWNS,
  WALL_SPOT,
  YOUNG_YEARS,
  type CustomerAnswers,
  type Unknown,
} from '../../../../analysis/answer/advice-customer.ts';
import type { Chosen } from '../../../state/chosen.ts';
import { t } from '../../../../analysis/language/t.ts';

/** A buyer's answers as a link has them, and what to say where the link makes no sense. */
export interface AnswersReading {
  readonly answers: CustomerAnswers;
  readonly problem: string | null;
}

/** Reads `home-no,wall-yes`; `null` is a buyer who was asked nothing. What makes no sense is left out, and said. */
export function readAnswersText(text: string | null): AnswersReading {
  const answers: Partial<Record<Unknown, string>> = {};
  const wrong: string[] = [];
  for (const part of (text ?? '').split(',').filter((one) => one !== '')) {
    const [name, value] = part.split('-');
    const unknown = UNKNOWNS.find((one) => one === name);
    if (unknown && answers[unknown] === undefined && isAnswer(unknown, value)) answers[unknown] = value;
    else wrong.push(part);
  }
  const shown = wrong.join(', ').slice(0, 40);
  return {
    answers: answers as CustomerAnswers,
    problem:
      wrong.length === 0
        ? null
        : t`The link’s answers of a buyer “${shown}” mean nothing here, so they were left out.`,
  };
}

/** The text of answers; `undefined` for none. */
export function writeAnswersText(answers: CustomerAnswers): string | undefined {
  const parts = UNKNOWNS.flatMap((unknown) =>
    answers[unknown] === undefined ? [] : [`${unknown}-${answers[unknown]}`],
  );
  return parts.length === 0 ? undefined : parts.join(',');
}

function isAnswer(unknown: Unknown, value: string | undefined): value is string {
  return (CUSTOMER_ANSWERS[unknown] as readonly string[]).includes(value ?? '');
}

/** The choices of the page that answers come to, and the answers that the page has no choice for. */
export function carriedToPage({ wall, young, fruit, stands, home }: CustomerAnswers): {
  readonly change: Partial<Chosen>;
  readonly left: CustomerAnswers;
} {
  return {
    change: {
      ...(wall === 'yes' && { spot: WALL_SPOT }),
      ...(young === 'yes' && { ageYears: YOUNG_YEARS }),
      ...(fruit === 'yes' && { fruitLoad: true }),
      ...(stands === 'pot' && { container: true }),
    },
    left: {
      ...(home && { home }),
      ...(stands === 'ground' && { stands }),
      ...(wall === 'no' && { wall }),
      ...(young === 'no' && { young }),
      ...(fruit === 'no' && { fruit }),
    },
  };
}

/** Whether the page has a choice for any of them. */
export function canCarry(answers: CustomerAnswers): boolean {
  return Object.keys(carriedToPage(answers).change).length > 0;
}
