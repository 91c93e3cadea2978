import type { PlantingLife } from '../../../analysis/answer/life.ts';
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
  '.': { told: 'living, too young to bear', short: 'too young to bear' },
  c: { told: 'a crop picked', short: 'picked' },
  b: {
    told: 'a crop picked, though its bloom or new growth had been hit',
    short: 'picked after bloom or new growth was hit',
  },
  f: { told: 'its crop lost', short: 'crop lost' },
  l: { told: 'leaves and twigs lost', short: 'leaves lost' },
  w: { told: 'major limbs lost', short: 'limbs lost' },
  k: { told: 'killed to the graft', short: 'killed' },
  r: { told: 'no crop while it grew again', short: 'growing again' },
  '?': { told: 'winter not complete, no loss seen', short: 'not complete' },
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
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];

/** `third`, `21st`. */
export function ordinal(count: number): string {
  const tail = count % 100 > 10 && count % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][count % 10] ?? 'th');
  return FIRST_TEN[count - 1] ?? `${count}${tail}`;
}

/** What a letter says; the last one of a tree whose end isn't known says so. */
function toldOf({ fate, course }: PlantingLife, step: number): string {
  if (fate === 'unknown' && step === course.length - 1)
    return 'a night cold enough to kill it, in a winter that isn’t complete';
  return LETTER_WORDS[course[step]]?.told ?? course[step];
}

/**
 * One winter of a tree: `Planted autumn 1982, third winter 1984–85: killed to the graft.`
 * @param step winters since the first, from 0.
 */
export function cellSentence(planting: PlantingLife, step: number, hemisphere: Hemisphere): string {
  const winter = formatWinter(planting.winter + step, hemisphere);
  return `Planted autumn ${autumnOf(planting.winter, hemisphere)}, ${ordinal(step + 1)} winter ${winter}: ${toldOf(planting, step)}.`;
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
      parts.push(`${short} ${formatWinter(winter + from, hemisphere)}${doubtful ? ', not certain' : ''}`);
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
  return { killed: 'killed', living: 'living at the end of the record', unknown: 'not known' }[fate];
}

/** What became of one tree, in two or three sentences. */
export function storyOf(planting: PlantingLife, hemisphere: Hemisphere): string {
  const { winter, course, crops, years } = planting;
  const named = (step: number): string => formatWinter(winter + step, hemisphere);
  const start = `Planted in the autumn of ${autumnOf(winter, hemisphere)}, the tree`;
  const gave = crops === 0 ? 'no crop' : plural(crops, 'crop');
  const lost = (
    [
      ['f', 'its crop'],
      ['l', 'leaves and twigs'],
      ['w', 'major limbs'],
    ] as const
  ).flatMap(([letter, what]) => {
    const winters = [...course].flatMap((entry, step) => (entry === letter ? [named(step)] : []));
    if (winters.length === 0) return [];
    const when =
      winters.length > NAMED_LOSSES
        ? `${winters.length} winters between ${winters[0]} and ${winters.at(-1)}`
        : listed(winters);
    return [`${what} in ${when}`];
  });
  const losses = lost.length === 0 ? '' : ` It lost ${listed(lost, ', and')}.`;
  return `${start} gave ${gave} in ${plural(course.length, 'winter')}.${losses} ${endOf(planting, years, hemisphere)}`;
}

function endOf(planting: PlantingLife, years: number, hemisphere: Hemisphere): string {
  const { fate, winter, course } = planting;
  const last = formatWinter(winter + course.length - 1, hemisphere);
  if (fate === 'killed')
    return `The winter of ${last}, its ${ordinal(course.length)}, killed it to the graft.`;
  if (fate === 'unknown')
    return `The winter of ${last} isn’t complete, and one of its nights was cold enough to kill the tree: what became of it is not known.`;
  return `It was living at the end of the record, after ${plural(years, 'winter')}.`;
}

/** `a`, `a and b`, `a, b and c`; parts that hold an `and` of their own want a comma before the last. */
export function listed(parts: readonly string[], last = ' and'): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')}${last} ${parts.at(-1)}`;
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
  if (killing.length === 0) return 'No tree is known to have died.';
  const worst = [...killing].sort((a, b) => b.killed - a.killed || a.winter - b.winter).slice(0, 5);
  const told = worst.map(
    ({ winter, killed, standing }) =>
      `${formatWinter(winter, hemisphere)} (${killed} of ${standing} then standing)`,
  );
  if (killing.length === 1) return `One winter killed trees: ${told[0]}.`;
  const intro =
    killing.length > worst.length
      ? `${killing.length} winters killed trees, these most of them: `
      : `${killing.length} winters killed trees: `;
  return `${intro}${listed(told)}.`;
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
    words: `${formatWinter(winter, hemisphere)} killed ${killed}`,
  }));
}
