import { beforeAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { quantileType7 } from '../../analysis/math/quantile.ts';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import { estimateOffset } from '../../analysis/spot/thermometer/estimate-offset.ts';
import { nightLikeness, PAIR_NOISE } from '../../analysis/spot/thermometer/pair-noise.ts';
import { pairNights } from '../../analysis/spot/thermometer/pair-nights.ts';
import type { PairedNight } from '../../analysis/spot/thermometer/paired-night.ts';
import { civilDate } from '../../analysis/units/calendar.ts';
import { haveRealData } from './real-records.ts';
import { pairsOfNights } from './thermometer-stations.ts';

const NIGHTS = 15;
/** Nights of a winter that make it worth drawing 15 from. */
const NIGHTS_OF_A_WINTER = 20;

interface Noise {
  readonly winter: number;
  readonly pair: PairedNight;
}

/** Calm nights of November to March of one station beside the other, differences about their median over 11 winters. */
function noiseOf(station: KeptNights, other: KeptNights): Noise[] {
  const readings = [...other.day].map((day, row) => ({
    day,
    minimumC: other.sustained[0]![row]! / 100,
    maximumC: null,
    line: row,
  }));
  const cold = pairNights(readings, station).pairs.filter(({ day, kind }) => {
    const { month } = civilDate(day);
    return kind === 'calm' && (month <= 3 || month >= 11);
  });
  const winterOf = (day: number): number => civilDate(day + 60).year;
  const winters = cold.map(({ day }) => winterOf(day));
  const centres = new Map(
    [...new Set(winters)].map((winter) => {
      const near = cold.filter((_, i) => Math.abs(winters[i]! - winter) <= 5);
      return [
        winter,
        quantileType7(
          near.map(({ differenceC }) => differenceC),
          0.5,
        ),
      ];
    }),
  );
  return cold.map((pair, i) => ({
    winter: winters[i]!,
    pair: { ...pair, differenceC: pair.differenceC - centres.get(winters[i]!)! },
  }));
}

interface Coverage {
  readonly yards: number;
  readonly share: number;
  readonly shareUnwidened: number;
  readonly widthF: number;
}

/** How often the interval of 15 nights holds 0, with the widths in °F; nights strewn over each winter or in a row. */
function coverage(noise: readonly Noise[], inARow: boolean): Coverage {
  const random = seededRandom(3);
  const tally = { yards: 0, held: 0, widthF: 0, heldUnwidened: 0 };
  for (const winter of new Set(noise.map((night) => night.winter))) {
    const all = noise.filter((night) => night.winter === winter).map(({ pair }) => pair);
    if (all.length < NIGHTS_OF_A_WINTER) continue;
    const groups = inARow
      ? Array.from({ length: Math.floor(all.length / NIGHTS) }, (_, k) =>
          all.slice(k * NIGHTS, (k + 1) * NIGHTS),
        )
      : Array.from({ length: 4 }, () =>
          all
            .map((pair) => ({ pair, at: random.uniform() }))
            .sort((a, b) => a.at - b.at)
            .slice(0, NIGHTS)
            .map(({ pair }) => pair)
            .sort((a, b) => a.day - b.day),
        );
    for (const group of groups) {
      const { spread, unwidened } = estimateOffset(group).calm!;
      tally.yards += 1;
      tally.held += Number(spread.lowC <= 0 && spread.highC >= 0);
      tally.heldUnwidened += Number(unwidened.lowC <= 0 && unwidened.highC >= 0);
      tally.widthF += 1.8 * (spread.highC - spread.lowC);
    }
  }
  return {
    yards: tally.yards,
    share: tally.held / tally.yards,
    shareUnwidened: tally.heldUnwidened / tally.yards,
    widthF: tally.widthF / tally.yards,
  };
}

/** Correlation of the noise of nights of one winter from `from` to below `to` days apart. */
function likeness(noise: readonly Noise[], from: number, to: number): number {
  const scale = robustDeviationC(noise);
  const held = noise.map(({ pair }) => Math.max(-4, Math.min(4, pair.differenceC / scale)));
  const variance = held.reduce((sum, value) => sum + value * value, 0) / held.length;
  let [sum, count] = [0, 0];
  for (let i = 0; i < noise.length; i++) {
    for (let j = i + 1; j < noise.length && noise[j]!.pair.day - noise[i]!.pair.day < to; j++) {
      if (noise[j]!.winter !== noise[i]!.winter || noise[j]!.pair.day - noise[i]!.pair.day < from) continue;
      sum += held[i]! * held[j]!;
      count += 1;
    }
  }
  return sum / count / variance;
}

function robustDeviationC(noise: readonly Noise[]): number {
  const values = noise.map(({ pair }) => pair.differenceC);
  return (quantileType7(values, 0.75) - quantileType7(values, 0.25)) / 1.349;
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

describe.skipIf(!haveRealData)('own thermometers played by real neighbouring stations', () => {
  let noises: Noise[][] = [];
  beforeAll(async () => {
    noises = (await pairsOfNights()).map(([station, spot]) => noiseOf(station, spot));
  }, 60_000);

  it('differ from night to night as the fitted noise says', () => {
    // Standard deviation of the middle half: 1.349 interquartile ranges of Student's t with 7 degrees are 1.42.
    const fitted = (PAIR_NOISE.calm.scaleC * 1.4222) / 1.349;
    const found = mean(noises.map(robustDeviationC));
    console.log(`noise of calm nights ${found.toFixed(2)} °C, fitted ${fitted.toFixed(2)} °C`);
    expect(Math.abs(found - fitted)).toBeLessThan(0.15);
  });

  it.each([
    [1, 2],
    [3, 4],
    [6, 9],
    [13, 18],
    [25, 40],
  ])('are as alike %i days apart as the fitted likeness says', (from, to) => {
    const found = mean(noises.map((noise) => likeness(noise, from, to)));
    const fitted = nightLikeness((from + to - 1) / 2);
    console.log(`${from} days apart: likeness ${found.toFixed(2)}, fitted ${fitted.toFixed(2)}`);
    expect(Math.abs(found - fitted)).toBeLessThan(0.1);
  });

  it.each([
    ['strewn over one winter', false, 3],
    ['in a row', true, 4],
  ] as const)('15 calm nights %s: the interval of 90 percent holds the offset', (words, inARow, widestF) => {
    const found = noises.map((noise) => coverage(noise, inARow));
    const share = mean(found.map((one) => one.share));
    const unwidened = mean(found.map((one) => one.shareUnwidened));
    const widthF = mean(found.map((one) => one.widthF));
    const percent = (value: number): string => `${Math.round(100 * value)} %`;
    console.log(
      `15 calm nights ${words}, ${found.reduce((sum, { yards }) => sum + yards, 0)} yards: ${percent(share)} held, ` +
        `${widthF.toFixed(2)} °F wide (Georgia ${found[0]!.widthF.toFixed(2)}); unwidened ${percent(unwidened)}`,
    );
    expect(share).toBeGreaterThan(0.84);
    expect(share).toBeLessThan(0.96);
    expect(widthF).toBeLessThan(widestF);
    // Taking successive nights for so many independent ones would promise too much.
    expect(unwidened).toBeLessThan(0.82);
  });
});
