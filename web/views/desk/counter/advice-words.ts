import {
  COVER_NIGHTS_MOST,
  KILL_ONCE_IN,
  LEAF_ONCE_IN,
  POT_NIGHTS_MOST,
  type OpenAdvice,
} from '../../../../analysis/answer/advice.ts';
import type { LossFigure } from '../../../../analysis/answer/advice-figures.ts';
import type { RowAdvice } from '../../../../analysis/answer/advice-here.ts';
import type { NightsAWinter } from '../../../../analysis/answer/advice-nights.ts';
import { PLAN_COVERS } from '../../../../analysis/answer/advice-plans.ts';
import { t } from '../../../../analysis/language/t.ts';
import { coverWords } from '../../../format/cover-words.ts';
import { formatWinter } from '../../../format/dates.ts';
import { formatCount, formatPlain, plural } from '../../../format/numbers.ts';
import { formatHeadline, formatPeriodFigure, formatRangeWithin } from '../../../format/periods.ts';
import type { Hemisphere } from '../../../../analysis/winter/winter-year.ts';

/** Names of the classes, where a few words must do. */
export const CLASS_TITLES: Readonly<Record<OpenAdvice, string>> = {
  'plant-out': t`Plant it out`,
  'with-plan': t`Plant it with a plan`,
  'in-pot': t`Keep it in a pot and bring it in`,
  'pot-or-not': t`In a pot, or not here`,
  'not-here': t`Not here`,
};

/** Rows of a group shown before somebody asks for all: so many that a list is one look. */
const ROWS_AT_FIRST = 6;

/** How many rows of a group are shown at first. Of what is not for here the names do. */
export function shownAtFirst(advice: OpenAdvice, rows: number): number {
  if (advice === 'not-here') return 0;
  // A button for the one row that is left would take its place.
  return rows <= ROWS_AT_FIRST + 1 ? rows : ROWS_AT_FIRST;
}

/** What a group is called: the class, or what nobody is there to bring in. */
export function groupName(advice: OpenAdvice, rows: readonly RowAdvice[]): string {
  return rows.some(({ staysOut }) => staysOut) ? t`Keep it in a pot, out all winter` : CLASS_TITLES[advice];
}

/** A group's heading; pots with the nights on which they come in: `Keep it in a pot and bring it in on about 4 to 12 nights a winter`. */
export function groupTitle(advice: OpenAdvice, rows: readonly RowAdvice[]): string {
  const means = rows.flatMap(({ staysOut, potNights }) => (staysOut ? [] : (potNights?.mean ?? [])));
  if (advice !== 'in-pot' || means.length === 0) return groupName(advice, rows);
  const [least, most] = [Math.min(...means), Math.max(...means)].map(Math.round);
  if (most === 0) return t`Keep it in a pot and bring it in on less than one night a winter`;
  return least === most
    ? t`Keep it in a pot and bring it in on about ${plural(most, t`night`, t`nights`)} a winter`
    : t`Keep it in a pot and bring it in on about ${formatCount(least)} to ${formatCount(most)} nights a winter`;
}

const RARE = t`leaves lost no more often than 1 winter in ${LEAF_ONCE_IN}, and the tree killed no more often than 1 winter in ${KILL_ONCE_IN}, both at the frequent end of the range`;

/** What puts a type into a class, a sentence each. */
export const CLASS_RULES: Readonly<Record<OpenAdvice, string>> = {
  'plant-out': t`In the ground, uncovered: ${RARE}.`,
  'with-plan': t`The same under a cover that a person can put on, on no more than ${COVER_NIGHTS_MOST} nights of a mean winter. Tried, least work first: ${PLAN_COVERS.map((ids) => coverWords(ids)).join('; ')}. What is put on at night counts only where somebody is at home. Banks save the graft and no leaves; heat lamps are never among them.`,
  'in-pot': t`Neither of these, but in a pot it would have to come in on no more than ${POT_NIGHTS_MOST} nights of a mean winter, into a room that stays above freezing, and somebody is there to carry it; or it may stay out all winter by the rule for the ground. In a pot the roots are as cold as the air, so it comes in sooner than a tree in the ground would be covered.`,
  'pot-or-not': t`Neither planted out nor with a plan. Once its nights are counted it goes to the pots, if it would come in on no more than ${POT_NIGHTS_MOST} nights of a mean winter, or to those that are not for here.`,
  'not-here': t`None of these: too cold in the ground even under the strongest cover, and too many nights for a pot.`,
};

/** Why the figures in the rules are what they are. */
export const RULES_ARE_CHOICES = t`The limits are design choices. Leaves lost cost the next crop, so 1 winter in ${LEAF_ONCE_IN} costs two crops in ten. At 1 winter in ${KILL_ONCE_IN} two trees in three would still see their tenth year if the frequent end of the range were true. The frequent end is the most frequent of what the winters leave open (90% range, never rarer than the count), of the type’s own kill figures, and of what spot and cover gain.`;

/** One loss in words: what is said first, its range, the count behind it. */
export interface LossWords {
  readonly main: string;
  readonly range: string;
  readonly count: string;
}

export function lossWords({ headline, short, long, hits, winters }: LossFigure): LossWords {
  const count = t`${formatCount(hits)} of ${plural(winters, t`winter`, t`winters`)}`;
  if (winters === 0) return { main: t`not known`, range: '', count: '' };
  if (headline.basis === 'not seen') return { main: formatHeadline(headline, winters), range: '', count };
  if (headline.basis === 'beyond')
    return { main: t`1 winter in ${formatPeriodFigure(short.winters)} or rarer`, range: '', count };
  return {
    main: formatHeadline(headline, winters),
    range: formatRangeWithin(short.winters, long, winters),
    count,
  };
}

/** `about 4 nights`, `no night`; below one told to the tenth. */
export function aboutNights(mean: number): string {
  if (mean === 0) return t`no night`;
  if (mean < 0.95) return t`${formatPlain(Math.max(0.1, mean), 1)} nights`;
  return t`about ${plural(Math.round(mean), t`night`, t`nights`)}`;
}

/** How it spreads over the winters: `half the winters 3 or fewer, one in ten more than 9, most 14 (1989–90)`. */
export function nightsSpread({ median, hard, most, winters }: NightsAWinter, hemisphere: Hemisphere): string {
  if (most.nights === 0) return t`none in ${plural(winters, t`winter`, t`winters`)}`;
  const half = Math.floor(median);
  if (half === 0)
    return t`half the winters none, one in ten more than ${formatCount(Math.floor(hard))}, most ${formatCount(most.nights)} (${formatWinter(most.winter, hemisphere)})`;
  return t`half the winters ${formatCount(half)} or fewer, one in ten more than ${formatCount(Math.floor(hard))}, most ${formatCount(most.nights)} (${formatWinter(most.winter, hemisphere)})`;
}

/** The groups of the counter in order, with those that nothing can be told of left out. */
export function groupsOf(
  rows: readonly RowAdvice[],
): readonly { readonly advice: OpenAdvice; readonly rows: readonly RowAdvice[] }[] {
  const open = rows.some(({ advice }) => advice === 'pot-or-not');
  const shown: readonly OpenAdvice[] = [
    'plant-out',
    'with-plan',
    ...(open ? (['pot-or-not'] as const) : []),
    ...(!open || rows.some(({ advice }) => advice === 'in-pot') ? (['in-pot'] as const) : []),
    'not-here',
  ];
  return shown.map((advice) => ({ advice, rows: rows.filter((row) => row.advice === advice).sort(byLeaf) }));
}

/** The safest first. */
function byLeaf(a: RowAdvice, b: RowAdvice): number {
  return (
    b.bare.leaf.short.winters - a.bare.leaf.short.winters ||
    b.bare.kill.short.winters - a.bare.kill.short.winters
  );
}
