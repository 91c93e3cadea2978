import { correctSustained, flatten } from '../../analysis/night/correct-sustained.ts';
import { sustainedFromMinima } from '../../analysis/night/sustained-from-minima.ts';
import { fitCorrection, fitMinimaOnly } from './fit-correction.ts';
import type { SampleNight } from './night-sample.ts';

/** A night's S_h as a station would get it whose readings had no part in the fit. */
export interface JudgedNight extends SampleNight {
  readonly estimated: Float64Array;
  /** The same had the station kept no maxima. */
  readonly fromMinima: Float64Array;
}

/** Judges every night by constants fitted without its place. */
export function judgeLeftOut(nights: readonly SampleNight[]): JudgedNight[] {
  const places = [...new Set(nights.map(({ place }) => place))];
  return places.flatMap((place) => {
    const others = nights.filter((night) => night.place !== place);
    const constants = flatten(fitCorrection(others));
    const minimaOnly = flatten(fitMinimaOnly(others));
    return nights
      .filter((night) => night.place === place)
      .map((night) => {
        const estimated = Float64Array.from(night.curve);
        correctSustained(
          estimated,
          Float64Array.from(night.features),
          Math.max(night.tmaxBefore, night.tmaxAfter),
          constants,
        );
        const fromMinima = Float64Array.from(night.curve);
        sustainedFromMinima(fromMinima, night.minimumFeatures, Infinity, minimaOnly);
        return { ...night, estimated, fromMinima };
      });
  });
}
