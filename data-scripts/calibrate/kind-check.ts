import { kindByDayWind } from '../../analysis/night/night-kind.ts';
import { NIGHT_KINDS } from '../../analysis/records/nights.ts';
import { FIT_UP_TO_C } from './fit-correction.ts';
import type { SampleNight } from './night-sample.ts';

/** `byWind -> told -> nights`: kinds by the wind around the lowest reading against a rule that knows less. */
export type Confusion = Record<string, Record<string, number>>;

/** Confusion of the two rules that daily records use, over cold nights of airports with hourly wind. */
export function kindConfusion(nights: readonly SampleNight[]): {
  nights: number;
  byTemperatures: Confusion;
  byDailyWind: Confusion;
} {
  const judged = nights.filter(({ windKind, curve }) => windKind >= 0 && curve[0] <= FIT_UP_TO_C);
  const withDayWind = judged.filter(({ dayWindMs: [before, after] }) => !Number.isNaN(before + after));
  return {
    nights: judged.length,
    byTemperatures: confusion(judged, ({ kind }) => kind),
    byDailyWind: confusion(withDayWind, ({ dayWindMs: [before, after] }) => kindByDayWind(before, after)),
  };
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
