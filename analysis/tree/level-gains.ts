import { NO_GAIN_SPREAD, type GainSpread } from '../winter/gain-spread.ts';
import type { Gains } from '../winter/winter-minima.ts';
import { byLevel, type Level } from './levels.ts';

/** Gains at each level: a soil bank saves the graft and nothing above it. */
export type LevelGains = Readonly<Record<Level, Gains>>;

/** The same with the ends of each gain. */
export type LevelGainSpreads = Readonly<Record<Level, GainSpread>>;

/** The same value at every level. */
export function atEveryLevel<T>(value: T): Readonly<Record<Level, T>> {
  return byLevel(() => value);
}

export const NO_LEVEL_GAIN_SPREADS: LevelGainSpreads = atEveryLevel(NO_GAIN_SPREAD);
