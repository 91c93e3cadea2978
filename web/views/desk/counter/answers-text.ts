import {
  CUSTOMER_ANSWERS,
  UNKNOWNS,
  type CustomerAnswers,
  type Unknown,
} from '../../../../analysis/answer/advice-customer.ts';
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
