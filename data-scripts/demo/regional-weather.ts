import { coldFronts, type ColdFront } from './cold-fronts.ts';
import { randomStream, type RandomStream } from './random-stream.ts';
import { timelineOf, winterness, type Timeline } from './timeline.ts';

/** What the whole region shares, hour by hour; a place adds its own height, shore, hollow and noise. */
export interface RegionalWeather {
  readonly seed: number;
  readonly timeline: Timeline;
  readonly fronts: readonly ColdFront[];
  /** Temperature of the well-mixed air at sea level at the region's middle, °C. */
  readonly airC: Float32Array;
  /** Wind of the free air near the ground, m/s. */
  readonly windMs: Float32Array;
  /** Cloud cover, 0-1. */
  readonly cloud: Float32Array;
  /** Surface of the sea, °C, one value a day. */
  readonly seaC: Float32Array;
}

/** A warming of the air through the decades, °C in ten years, counted from 1 July 1988. */
const TREND_C_PER_DECADE = 0.2;
const TREND_ZERO_DAY = 6756;

/** Region-wide weather of whole winters, `firstWinter` to `lastWinter`, from a seed. */
export function regionalWeather(seed: number, firstWinter: number, lastWinter: number): RegionalWeather {
  const timeline = timelineOf(firstWinter, lastWinter);
  const fronts = coldFronts(timeline, randomStream(seed, 'fronts'));
  const { hours, days } = timeline;
  const airC = new Float32Array(hours);
  const windMs = new Float32Array(hours);
  const cloud = new Float32Array(hours);
  const seaC = new Float32Array(days);
  const slow = dailyNoise(days + 1, 0.8, randomStream(seed, 'slow air'));
  const breeze = dailyNoise(days + 1, 0.55, randomStream(seed, 'breeze'));
  const sky = dailyNoise(days + 1, 0.6, randomStream(seed, 'sky'));
  for (let day = 0; day < days; day++) {
    const wintry = winterness(timeline.dayOfYear[day]);
    const trendC = ((timeline.firstDay + day - TREND_ZERO_DAY) / 3652.5) * TREND_C_PER_DECADE;
    const seasonC = 28.2 - 15.5 * wintry + trendC;
    seaC[day] = 28.3 - 12.3 * winterness(timeline.dayOfYear[(day + days - 24) % days]) + 0.6 * trendC;
    for (let hour = 0; hour < 24; hour++) {
      const i = day * 24 + hour;
      const share = hour / 24;
      airC[i] = seasonC + (1 + 1.9 * wintry) * between(slow, day, share);
      windMs[i] = 3.1 * Math.exp(0.38 * between(breeze, day, share));
      cloud[i] = 1 / (1 + Math.exp(-(1.9 * between(sky, day, share) - 0.45)));
    }
  }
  for (const front of fronts) addFront(front, airC, windMs, cloud);
  return { seed, timeline, fronts, airC, windMs, cloud, seaC };
}

/** Warmer, cloudier air before the front; colder air, wind and then a clear calm high behind it. */
function addFront(front: ColdFront, airC: Float32Array, windMs: Float32Array, cloud: Float32Array): void {
  const { hour, dropC, onsetH, staysH, windH, cloudAfter } = front;
  const strength = Math.min(1, dropC / 8);
  const end = Math.min(airC.length, hour + Math.ceil(staysH + 110));
  for (let i = Math.max(0, hour - 20); i < end; i++) {
    const after = i - hour;
    if (after < 0) {
      const near = 1 + after / 20;
      airC[i] += 0.22 * dropC * near;
      cloud[i] += (0.85 - cloud[i]) * near * strength;
      windMs[i] += 2 * near * strength;
      continue;
    }
    const arrived = 1 - Math.exp(-after / onsetH);
    const warmingBack = after > staysH ? Math.exp(-(after - staysH) / 26) : 1;
    airC[i] += 0.22 * dropC * Math.exp(-after / onsetH) - dropC * arrived * warmingBack;
    const blowing = Math.exp(-((after / windH) ** 3));
    const hold = strength * (after > staysH ? Math.exp(-(after - staysH) / 20) : 1);
    windMs[i] =
      windMs[i] * (1 - 0.6 * hold * (1 - blowing)) + 6.2 * Math.min(1.25, dropC / 9) * arrived * blowing;
    const clearing = after < 36 ? cloudAfter : Math.min(cloudAfter, 0.12);
    cloud[i] += (clearing - cloud[i]) * hold * Math.min(1, after / 5);
  }
}

/** Correlated standard normal noise, one value a day. */
function dailyNoise(count: number, memory: number, random: RandomStream): Float64Array {
  const values = new Float64Array(count);
  const fresh = Math.sqrt(1 - memory * memory);
  values[0] = random.normal();
  for (let i = 1; i < count; i++) values[i] = memory * values[i - 1] + fresh * random.normal();
  return values;
}

function between(values: Float64Array, day: number, share: number): number {
  return values[day] + share * (values[day + 1] - values[day]);
}
