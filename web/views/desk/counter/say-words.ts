import type { OpenAdvice } from '../../../../analysis/answer/advice.ts';
import type { RowAdvice } from '../../../../analysis/answer/advice-here.ts';
import type { LossFigure } from '../../../../analysis/answer/advice-figures.ts';
import { sayList } from '../../../../analysis/language/lists.ts';
import { said, t } from '../../../../analysis/language/t.ts';
import type { Hemisphere } from '../../../../analysis/winter/winter-year.ts';
import { coverWords } from '../../../format/cover-words.ts';
import { formatWinter } from '../../../format/dates.ts';
import { countedWinters } from '../../../format/estimated.ts';
import { formatCount, plural } from '../../../format/numbers.ts';
import { namesInRow, shortTypeName } from '../../../format/type-names.ts';
import { aboutNights, groupsOf, lossWords } from './advice-words.ts';

/** What a sentence to the buyer rests on. */
export interface Told {
  readonly place: string;
  readonly winters: { readonly used: number; readonly first: number | null; readonly last: number | null };
  readonly estimated: boolean;
  readonly hemisphere: Hemisphere;
}

/** What ends everything that is said. */
export const FORECAST_FIRST = t`These are past winters: a forecast or warning in force goes before them.`;

/** Types named in what is said of a place. */
const NAMED = 4;

/** Ready to be read aloud: one type at a place. */
export function sayType(row: RowAdvice, told: Told): string {
  return [...typeSentences(row, told), FORECAST_FIRST].join(' ');
}

/** The same of the whole place. */
export function sayPlace(rows: readonly RowAdvice[], told: Told): string {
  const sentences = groupsOf(rows).flatMap(({ advice, rows: own }) => groupSentence(advice, own));
  if (sentences.length === 0)
    return [t`${recordAt(told)} tells of too few winters for any advice.`, FORECAST_FIRST].join(' ');
  return [t`By ${recordAt(told)}:`, ...sentences, FORECAST_FIRST].join(' ');
}

function typeSentences(row: RowAdvice, told: Told): readonly string[] {
  const name = shortTypeName(said(row.name));
  const { bare, covered, coverNights, potNights } = row;
  const bareWords = [
    t`Uncovered its leaves would have been lost ${often(bare.leaf)}, and the tree killed ${often(bare.kill)}.`,
  ];
  const record = t`That is by ${recordAt(told)}.`;
  switch (row.advice) {
    case null:
      return [t`${recordAt(told)} has too few winters to say anything of ${name}.`];
    case 'plant-out':
      return [t`${name}: plant it out at ${told.place}.`, ...bareWords, record];
    case 'with-plan': {
      if (!covered?.does)
        return [t`${name}: the record is too short to plant it without a plan.`, ...bareWords, record];
      const cover = coverWords(covered.plan.ids);
      const work = !covered.plan.nightWork
        ? t`${name}: plant it with a plan at ${told.place}: ${cover}, with nothing to put on at night.`
        : coverNights
          ? t`${name}: plant it with a plan at ${told.place}: ${cover}, on ${aboutNights(coverNights.mean)} a winter, more than ${formatCount(Math.floor(coverNights.hard))} in one winter of ten.`
          : t`${name}: plant it with a plan at ${told.place}: ${cover}, on cold nights with somebody at home.`;
      return [
        work,
        t`So covered its leaves would have been lost ${often(covered.figures.leaf)}, and the tree killed ${often(covered.figures.kill)}.`,
        ...bareWords,
        record,
      ];
    }
    case 'in-pot':
    case 'pot-or-not': {
      const nights = row.staysOut
        ? t`${name}: keep it in a pot at ${told.place}, where it can stay out all winter.`
        : potNights
          ? t`${name}: keep it in a pot at ${told.place} and bring it in on ${aboutNights(potNights.mean)} a winter, more than ${formatCount(Math.floor(potNights.hard))} in one winter of ten.`
          : t`${name}: at ${told.place} in a pot that comes in on cold nights, if at all.`;
      return [nights, ...bareWords, record];
    }
    case 'not-here':
      return [
        t`${name}: not at ${told.place}.`,
        ...bareWords,
        ...(covered
          ? [
              t`Even under ${coverWords(covered.plan.ids)} its leaves would have been lost ${often(covered.figures.leaf)}.`,
            ]
          : []),
        record,
      ];
  }
}

/** `about 1 winter in 12 (1 in 7 to 1 in 25)`. */
function often(figure: LossFigure): string {
  const { main, range } = lossWords(figure);
  return range === '' ? main : t`${main} (${range})`;
}

function groupSentence(advice: OpenAdvice, rows: readonly RowAdvice[]): readonly string[] {
  if (rows.length === 0) return [];
  const names = namesOf(rows);
  switch (advice) {
    case 'plant-out':
      return [t`Planted out: ${names}.`];
    case 'with-plan':
      return [t`With a plan for cold nights: ${names}.`];
    case 'in-pot':
      if (rows.some(({ staysOut }) => staysOut)) return [t`In a pot that can stay out all winter: ${names}.`];
      return [t`In a pot that is brought in: ${names}.`];
    case 'pot-or-not':
      return [t`In a pot, if at all: ${names}.`];
    case 'not-here':
      return [t`Not here: ${names}.`];
  }
}

function namesOf(rows: readonly RowAdvice[]): string {
  const names = [...new Set(rows.map(({ name }) => shortTypeName(said(name))))];
  const shown = names.slice(0, NAMED);
  const left = names.length - shown.length;
  const row = namesInRow(shown);
  if (left > 0) return t`${row} and ${plural(left, t`more kind`, t`more kinds`)}`;
  return shown.some((name) => name.includes(',')) ? row : sayList(shown);
}

/** `74 estimated winters at SC 101, 1951–52 to 2024–25`. */
function recordAt({ place, winters, estimated, hemisphere }: Told): string {
  const count = countedWinters(winters.used, estimated);
  if (winters.first === null || winters.last === null) return t`${count} at ${place}`;
  return t`${count} at ${place}, ${formatWinter(winters.first, hemisphere)} to ${formatWinter(winters.last, hemisphere)}`;
}
