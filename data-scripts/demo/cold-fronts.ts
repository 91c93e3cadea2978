import type { RandomStream } from './random-stream.ts';
import { winterness, type Timeline } from './timeline.ts';

/** A cold front: when it passes, how much colder the air behind it is, and what sky and wind follow. */
export interface ColdFront {
  /** Hour of the timeline at which it reaches the region's middle. */
  readonly hour: number;
  /** Full drop of the air's temperature, °C. */
  readonly dropC: number;
  /** Hours in which two thirds of the drop come. */
  readonly onsetH: number;
  /** Hours from the passage until milder air returns. */
  readonly staysH: number;
  /** Hours the wind behind it keeps blowing. */
  readonly windH: number;
  /** Cloud cover of the first day and a half behind it, 0-1: low behind most fronts, high behind the grey windy ones. */
  readonly cloudAfter: number;
}

/** Strength of a winter's fronts by its regime: harsh winters come in runs, as they do on real citrus coasts. */
const HARSH_FACTOR = 1.22;
const MILD_FACTOR = 0.89;
const STAY_MILD = 0.87;
const STAY_HARSH = 0.8;
const WINTER_SPREAD = 0.06;
const DROP_SCALE_C = 3.9;
const DROP_SHAPE = 1.85;
/** Beyond this drop ever less is added: air can't be colder than where it came from. */
const SOFT_LIMIT_C = 11;

/** All fronts of the timeline in order. */
export function coldFronts(timeline: Timeline, random: RandomStream): ColdFront[] {
  const severity = winterSeverities(timeline, random);
  const fronts: ColdFront[] = [];
  let hour = 0;
  for (;;) {
    const today = Math.min(timeline.days - 1, Math.floor(hour / 24));
    const wintry = winterness(timeline.dayOfYear[today]);
    const meanGapH = 24 * (9 - 3.6 * wintry);
    hour += (meanGapH * (random.exponential() + random.exponential() + random.exponential())) / 3;
    if (hour >= timeline.hours) return fronts;
    const day = Math.floor(hour / 24);
    const strength = random.exponential() ** (1 / DROP_SHAPE) * (severity.get(timeline.winter[day]) ?? 1);
    const dropC = softened(
      (DROP_SCALE_C * strength + 2.9) * (0.22 + 0.78 * winterness(timeline.dayOfYear[day]) ** 1.3),
    );
    const grey = random.uniform() < 0.3;
    fronts.push({
      hour: Math.floor(hour),
      dropC,
      onsetH: 5 + 7 * random.uniform(),
      staysH: 26 + 34 * random.uniform() + 1.6 * dropC,
      windH: (grey ? 34 : 16) + 22 * random.uniform(),
      cloudAfter: grey ? 0.6 + 0.35 * random.uniform() : 0.04 + 0.2 * random.uniform(),
    });
  }
}

function softened(dropC: number): number {
  return dropC <= SOFT_LIMIT_C ? dropC : SOFT_LIMIT_C + 11 * (1 - Math.exp(-(dropC - SOFT_LIMIT_C) / 11));
}

/** A factor for each winter: a two-state chain of mild and harsh regimes, and a spread of its own. */
function winterSeverities(timeline: Timeline, random: RandomStream): Map<number, number> {
  const factors = new Map<number, number>();
  let harsh = false;
  for (let winter = timeline.winter[0]; winter <= timeline.winter[timeline.days - 1]; winter++) {
    harsh = random.uniform() < (harsh ? STAY_HARSH : 1 - STAY_MILD);
    factors.set(winter, (harsh ? HARSH_FACTOR : MILD_FACTOR) * Math.exp(WINTER_SPREAD * random.normal()));
  }
  return factors;
}
