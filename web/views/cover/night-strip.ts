import type { CoverWinter } from '../../../analysis/cover/cover-nights.ts';

/** One winter's column, bottom to top: lost even so, saved, covered for nothing. */
export interface StripWinter {
  readonly winter: number;
  readonly complete: boolean;
  readonly lost: number;
  readonly saved: number;
  readonly only: number;
}

/** Every winter of the record in its order, those without a night to cover too. */
export function stripOf(
  history: readonly { readonly winter: number; readonly complete: boolean }[],
  winters: readonly CoverWinter[],
): readonly StripWinter[] {
  const byWinter = new Map(winters.map((winter) => [winter.winter, winter]));
  return history.map(({ winter, complete }) => {
    const { toCover = 0, saved = 0, lost = 0 } = byWinter.get(winter) ?? {};
    return { winter, complete, lost, saved, only: toCover - saved - lost };
  });
}

/** Most nights in a winter, at least 1. */
export function mostNights(strip: readonly StripWinter[]): number {
  return Math.max(1, ...strip.map(({ lost, saved, only }) => lost + saved + only));
}

/** Whole numbers of nights to mark on the axis, above 0, at most `count` of them. */
export function nightTicks(most: number, count: number): readonly number[] {
  const step = [1, 2, 5, 10, 20, 50, 100].find((candidate) => most / candidate <= count) ?? 200;
  return Array.from({ length: Math.floor(most / step) }, (_, i) => (i + 1) * step);
}
