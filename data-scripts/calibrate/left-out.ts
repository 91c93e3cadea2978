import { correctSustained, flatten } from '../../analysis/night/correct-sustained.ts';
import { fitCorrection } from './fit-correction.ts';
import type { SampleNight } from './night-sample.ts';

/** A night's S_h as a station would get it whose readings had no part in the fit. */
export interface JudgedNight extends SampleNight {
  readonly estimated: Float64Array;
}

/** Judges every night by constants fitted without its place. */
export function judgeLeftOut(nights: readonly SampleNight[]): JudgedNight[] {
  const places = [...new Set(nights.map(({ place }) => place))];
  return places.flatMap((place) => {
    const constants = flatten(fitCorrection(nights.filter((night) => night.place !== place)));
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
        return { ...night, estimated };
      });
  });
}
