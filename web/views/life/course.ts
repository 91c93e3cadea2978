import type { PlantingLife } from '../../../analysis/answer/life.ts';
import { sayList } from '../../../analysis/language/lists.ts';
import { t } from '../../../analysis/language/t.ts';
import { formatWinter } from '../../format/dates.ts';
import { plural } from '../../format/numbers.ts';

/** Winters of one kind of loss that a story names one by one. */
const NAMED_LOSSES = 4;

type Hemisphere = 'north' | 'south';

/** What a letter of a course says of its winter. */
interface LetterWords {
  /** After the winter in a readout: `third winter 1984–85: ...`. */
  readonly told: string;
  /** In the table twin, after a count or before a winter. */
  readonly short: string;
}

export const LETTER_WORDS: Readonly<Record<string, LetterWords>> = {
  '.': { told: t`living, too young to bear`, short: t`too young to bear` },
  c: { told: t`a crop picked`, short: t`picked` },
  b: {
    told: t`a crop picked, though its bloom or new growth had been hit`,
    short: t`picked after bloom or new growth was hit`,
  },
  f: { told: t`its crop lost`, short: t`crop lost` },
  l: { told: t`leaves and twigs lost`, short: t`leaves lost` },
  w: { told: t`major limbs lost`, short: t`limbs lost` },
  k: { told: t`killed to the graft`, short: t`killed` },
  r: { told: t`no crop while it grew again`, short: t`growing again` },
  '?': { told: t`winter not complete, no loss seen`, short: t`not complete` },
};

/** Letters that tell of a loss, each named with its winter. */
const LOSSES = 'bflwk';

/** Year of the autumn in which the tree of a winter was planted: before its first winter. */
export function autumnOf(winter: number, hemisphere: Hemisphere): number {
  return hemisphere === 'north' ? winter - 1 : winter;
}

/** The winter a tree planted in the autumn of a year meets first. */
export function winterAfter(autumn: number, hemisphere: Hemisphere): number {
  return hemisphere === 'north' ? autumn + 1 : autumn;
}

const FIRST_TEN = [
  t`first`,
  t`second`,
  t`third`,
  t`fourth`,
  t`fifth`,
  t`sixth`,
  t`seventh`,
  t`eighth`,
  t`ninth`,
  t`tenth`,
];

/** `third`, `21st`. */
export function ordinal(count: number): string {
  const last = count % 100 > 10 && count % 100 < 14 ? 0 : count % 10;
  const figures = [t`${count}th`, t`${count}st`, t`${count}nd`, t`${count}rd`];
  return FIRST_TEN[count - 1] ?? figures[last] ?? figures[0];
}

/** What a letter says; the last one of a tree whose end isn't known says so. */
function toldOf({ fate, course }: PlantingLife, step: number): string {
  if (fate === 'unknown' && step === course.length - 1)
    return t`a night cold enough to kill it, in a winter that isn’t complete`;
  return LETTER_WORDS[course[step]]?.told ?? course[step];
}

/**
 * One winter of a tree: `Planted autumn 1982, third winter 1984–85: killed to the graft.`
 * @param step winters since the first, from 0.
 */
export function cellSentence(planting: PlantingLife, step: number, hemisphere: Hemisphere): string {
  const winter = formatWinter(planting.winter + step, hemisphere);
  return t`Planted autumn ${autumnOf(planting.winter, hemisphere)}, ${ordinal(step + 1)} winter ${winter}: ${toldOf(planting, step)}.`;
}

/** The course in words: runs of quiet winters counted, every loss with its winter. */
export function courseWords({ winter, course, fate }: PlantingLife, hemisphere: Hemisphere): string {
  const parts: string[] = [];
  for (let from = 0; from < course.length;) {
    const letter = course[from];
    const { short } = LETTER_WORDS[letter] ?? { short: letter };
    let to = from + 1;
    if (LOSSES.includes(letter)) {
      const doubtful = fate === 'unknown' && to === course.length;
      const lost = `${short} ${formatWinter(winter + from, hemisphere)}`;
      parts.push(doubtful ? t`${lost}, not certain` : lost);
    } else {
      while (course[to] === letter) to++;
      parts.push(`${to - from} ${short}`);
    }
    from = to;
  }
  return parts.join(', ');
}

/** `killed`, `living at the end of the record`, `not known`. */
export function fateWords({ fate }: Pick<PlantingLife, 'fate'>): string {
  return { killed: t`killed`, living: t`living at the end of the record`, unknown: t`not known` }[fate];
}

/** What became of one tree, in two or three sentences. */
export function storyOf(planting: PlantingLife, hemisphere: Hemisphere): string {
  const { winter, course, crops, years } = planting;
  const named = (step: number): string => formatWinter(winter + step, hemisphere);
  const gave = crops === 0 ? t`no crop` : plural(crops, t`crop`, t`crops`);
  const winters = plural(course.length, t`winter`, t`winters`);
  const lost = (
    [
      ['f', t`its crop`],
      ['l', t`leaves and twigs`],
      ['w', t`major limbs`],
    ] as const
  ).flatMap(([letter, what]) => {
    const hit = [...course].flatMap((entry, step) => (entry === letter ? [named(step)] : []));
    if (hit.length === 0) return [];
    const when =
      hit.length > NAMED_LOSSES
        ? t`${hit.length} winters between ${hit[0]} and ${hit[hit.length - 1]}`
        : listed(hit);
    return [t`${what} in ${when}`];
  });
  return [
    t`Planted in the autumn of ${autumnOf(winter, hemisphere)}, the tree gave ${gave} in ${winters}.`,
    ...(lost.length === 0 ? [] : [t`It lost ${listed(lost, ', and')}.`]),
    endOf(planting, years, hemisphere),
  ].join(' ');
}

function endOf(planting: PlantingLife, years: number, hemisphere: Hemisphere): string {
  const { fate, winter, course } = planting;
  const last = formatWinter(winter + course.length - 1, hemisphere);
  if (fate === 'killed')
    return t`The winter of ${last}, its ${ordinal(course.length)}, killed it to the graft.`;
  if (fate === 'unknown')
    return t`The winter of ${last} isn’t complete, and one of its nights was cold enough to kill the tree: what became of it is not known.`;
  return t`It was living at the end of the record, after ${plural(years, t`winter`, t`winters`)}.`;
}

/** `a`, `a and b`, `a, b and c`; parts that hold an `and` of their own want a comma before the last. */
export function listed(parts: readonly string[], last: ' and' | ', and' = ' and'): string {
  if (last === ' and' || parts.length < 2) return sayList(parts);
  return t`${parts.slice(0, -1).join(', ')}, and ${parts[parts.length - 1]}`;
}

/** A winter that killed, and how many of the trees then standing. */
export interface KillingWinter {
  readonly winter: number;
  readonly killed: number;
  readonly standing: number;
}

/** Winters that killed a tree, oldest first. */
export function killingWinters(plantings: readonly PlantingLife[]): readonly KillingWinter[] {
  const killed = new Map<number, number>();
  for (const { fate, winter, course } of plantings) {
    const last = winter + course.length - 1;
    if (fate === 'killed') killed.set(last, (killed.get(last) ?? 0) + 1);
  }
  return [...killed]
    .sort(([a], [b]) => a - b)
    .map(([winter, count]) => ({
      winter,
      killed: count,
      standing: plantings.filter((one) => one.winter <= winter && winter < one.winter + one.course.length)
        .length,
    }));
}

/** The same in a sentence; the worst few where there are many. */
export function killingSentence(killing: readonly KillingWinter[], hemisphere: Hemisphere): string {
  if (killing.length === 0) return t`No tree is known to have died.`;
  const worst = [...killing].sort((a, b) => b.killed - a.killed || a.winter - b.winter).slice(0, 5);
  const told = worst.map(
    ({ winter, killed, standing }) =>
      t`${formatWinter(winter, hemisphere)} (${killed} of ${standing} then standing)`,
  );
  if (killing.length === 1) return t`One winter killed trees: ${told[0]}.`;
  return killing.length > worst.length
    ? t`${killing.length} winters killed trees, these most of them: ${listed(told)}.`
    : t`${killing.length} winters killed trees: ${listed(told)}.`;
}

/** Killing winters to name above their columns: those that killed most, no two closer than `gap` winters. */
export function namedWinters(
  killing: readonly KillingWinter[],
  hemisphere: Hemisphere,
  { most = 6, gap = 3 } = {},
): readonly { readonly winter: number; readonly words: string }[] {
  const named: KillingWinter[] = [];
  for (const one of [...killing].sort((a, b) => b.killed - a.killed || a.winter - b.winter)) {
    if (named.length < most && named.every(({ winter }) => Math.abs(winter - one.winter) >= gap))
      named.push(one);
  }
  return named.map(({ winter, killed }) => ({
    winter,
    words: t`${formatWinter(winter, hemisphere)} killed ${killed}`,
  }));
}
