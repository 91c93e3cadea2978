import type { TypeAnswer } from '../../../analysis/answer/assessment.ts';
import { LEVELS, type Level } from '../../../analysis/tree/levels.ts';
import type { WinterBar } from '../../charts/winter-bars.ts';

/** A winter that would have hurt one of the trees on the sheet. */
export interface HurtWinter {
  readonly winter: number;
  /** False: listed, not counted. */
  readonly complete: boolean;
  /** Coldest level of the winter for the hours of the first type's leaves, °C. */
  readonly coldestC: number | null;
  /** Worst level reached by each type, in their order; `null`: none. */
  readonly worst: readonly (Level | null)[];
}

const WORST_FIRST = [...LEVELS].reverse();

/**
 * Winters in which any of the types lost something, in their order.
 * @param bars the same place's winters, for how cold each was
 */
export function hurtWinters(types: readonly TypeAnswer[], bars: readonly WinterBar[]): readonly HurtWinter[] {
  return bars.flatMap(({ winter, complete, valueC }) => {
    const worst = types.map(
      ({ levels }) =>
        WORST_FIRST.find((level) => {
          const counted = levels.find((entry) => entry.level === level)?.counted;
          return counted?.hit_winters.includes(winter) || counted?.hit_incomplete.includes(winter);
        }) ?? null,
    );
    return worst.every((level) => level === null) ? [] : [{ winter, complete, coldestC: valueC, worst }];
  });
}

/** The worst of them that have room, again in their order, and how many are left out. */
export function worstWinters(
  winters: readonly HurtWinter[],
  room: number,
): { readonly shown: readonly HurtWinter[]; readonly more: number } {
  const badness = ({ worst }: HurtWinter): number =>
    Math.max(...worst.map((level) => (level ? LEVELS.indexOf(level) : -1)));
  const byHarm = [...winters].sort(
    (a, b) => badness(b) - badness(a) || (a.coldestC ?? Infinity) - (b.coldestC ?? Infinity),
  );
  const shown = new Set(byHarm.slice(0, room));
  return { shown: winters.filter((winter) => shown.has(winter)), more: winters.length - shown.size };
}
