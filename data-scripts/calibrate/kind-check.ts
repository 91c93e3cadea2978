import { CALM, kindByDayWind, UNCLEAR, WINDY } from '../../analysis/night/night-kind.ts';
import { NIGHT_KINDS } from '../../analysis/records/nights.ts';
import { FIT_UP_TO_C } from './fit-correction.ts';
import type { SampleNight } from './night-sample.ts';

/** `byWind -> told -> nights`: kinds by the wind around the lowest reading against a rule that knows less. */
export type Confusion = Record<string, Record<string, number>>;

/** American airports with hourly wind: New York's three in 2013 and 2023, Seattle and Portland in 2014. */
const AMERICAN = ['New York', 'Seattle', 'Portland'];

/**
 * Confusion of the rules that a daily record can use, over cold nights of airports with hourly wind: all of them, and
 * the American ones apart. `byOneChange` is the temperature rule that looks at one change of the afternoons only, for
 * comparison: it misses the windy nights on which the fall came a day earlier.
 */
export function kindConfusion(nights: readonly SampleNight[]) {
  const judged = nights.filter(({ windKind, curve }) => windKind >= 0 && curve[0] <= FIT_UP_TO_C);
  return {
    ...confusions(judged),
    american: confusions(judged.filter(({ place }) => AMERICAN.includes(place))),
  };
}

function confusions(nights: readonly SampleNight[]) {
  const withDayWind = nights.filter(({ dayWindMs: [before, after] }) => !Number.isNaN(before + after));
  return {
    nights: nights.length,
    byTemperatures: confusion(nights, ({ kind }) => kind),
    byOneChange: confusion(nights, kindByOneChange),
    byDailyWind: confusion(withDayWind, ({ dayWindMs: [before, after] }) => kindByDayWind(before, after)),
  };
}

function kindByOneChange({ tmaxBefore, tmaxAfter, curve: [tmin] }: SampleNight): number {
  const range = tmaxAfter - tmin;
  if (tmaxBefore - tmaxAfter >= 8 || (range < 7 && tmaxAfter < 4)) return WINDY;
  return range >= 11 && Math.abs(tmaxAfter - tmaxBefore) < 4 ? CALM : UNCLEAR;
}

function confusion(nights: readonly SampleNight[], told: (night: SampleNight) => number): Confusion {
  return Object.fromEntries(
    NIGHT_KINDS.map((byWind, w) => {
      const row = nights.filter(({ windKind }) => windKind === w);
      return [
        byWind,
        Object.fromEntries(
          NIGHT_KINDS.map((name, t) => [name, row.filter((night) => told(night) === t).length]),
        ),
      ];
    }),
  );
}
