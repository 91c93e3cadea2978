import type { LevelEstimate, WinterFit } from './fitted-winters.ts';
import { longestClaim } from './headline.ts';

/** Return periods of a depth-duration curve, in winters. */
export const DEPTH_PERIODS = [2, 5, 10, 25, 50] as const;

/** Level of sustained cold that about 1 winter in `periodWinters` reaches for `hours` hours. */
export interface DepthLevel {
  readonly hours: number;
  readonly periodWinters: number;
  /** Null beyond twice the record, and where no curve can tell. `lowC` is the colder end of the 90 % range. */
  readonly level: LevelEstimate | null;
}

/**
 * Depth-duration: levels for each number of hours and each period. Longer cold is never colder than shorter cold, so
 * where separate fits cross, the shorter hours take over the colder level of the longer ones.
 * @param fits one fit for each number of hours, null where none; any order.
 * @param winters complete winters behind them.
 */
export function depthDuration(
  fits: readonly { readonly hours: number; readonly fit: WinterFit | null }[],
  winters: number,
  periods: readonly number[] = DEPTH_PERIODS,
): DepthLevel[] {
  const longestFirst = [...fits].sort((a, b) => b.hours - a.hours);
  return periods
    .flatMap((periodWinters) => {
      let colder: LevelEstimate | null = null;
      return longestFirst.map(({ hours, fit }) => {
        const own = fit !== null && periodWinters <= longestClaim(winters) ? fit.level(periodWinters) : null;
        const level: LevelEstimate | null = own && colder ? coldest(own, colder) : own;
        if (level) colder = level;
        return { hours, periodWinters, level };
      });
    })
    .sort((a, b) => a.hours - b.hours || a.periodWinters - b.periodWinters);
}

function coldest(a: LevelEstimate, b: LevelEstimate): LevelEstimate {
  return {
    levelC: Math.min(a.levelC, b.levelC),
    lowC: Math.min(a.lowC, b.lowC),
    highC: Math.min(a.highC, b.highC),
  };
}
