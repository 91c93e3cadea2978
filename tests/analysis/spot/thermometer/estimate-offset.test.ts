import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../analysis/math/seeded-random.ts';
import { estimateOffset, type KindEstimate } from '../../../../analysis/spot/thermometer/estimate-offset.ts';
import type { PairedNight } from '../../../../analysis/spot/thermometer/paired-night.ts';
import { stretchOf } from '../../../../analysis/spot/thermometer/repeated-nights.ts';
import { celsiusDifferenceToFahrenheit } from '../../../../analysis/units/temperature.ts';
import { inARow, simulateYard, strewn, type Calendar } from './simulated-yard.ts';

type Range = 'spread' | 'unwidened';

/** Share of yards whose planted offset lies in the interval, and the interval's mean width in °F. */
function recovered(
  yards: number,
  nights: number,
  calendar: Calendar,
  { range = 'spread' as Range, independent = false, seed = 1 } = {},
): { share: number; widthF: number } {
  const random = seededRandom(seed);
  let [held, width] = [0, 0];
  for (let yard = 0; yard < yards; yard++) {
    const offsetC = -4 + 8 * random.uniform();
    const pairs = simulateYard(offsetC, calendar(nights, random), random, independent);
    const { lowC, highC } = (estimateOffset(pairs).calm as KindEstimate)[range];
    if (lowC <= offsetC && offsetC <= highC) held += 1;
    width += celsiusDifferenceToFahrenheit(highC - lowC);
  }
  return { share: held / yards, widthF: width / yards };
}

describe('planted offsets, noise as between real neighbouring stations', () => {
  it('are in the 90 % interval in 85 to 95 of 100 yards, 15 calm nights of two winters, 2.5 °F wide at most', () => {
    const { share, widthF } = recovered(100, 15, strewn(2));
    console.log(`15 calm nights of two winters: ${share * 100} of 100 yards, ${widthF.toFixed(2)} °F wide`);
    expect(share).toBeGreaterThanOrEqual(0.85);
    expect(share).toBeLessThanOrEqual(0.95);
    expect(widthF).toBeLessThanOrEqual(2.5);
  });

  it('are so too, and in a shorter interval, where every night tells something new', () => {
    const { share, widthF } = recovered(100, 15, strewn(2), { range: 'unwidened', independent: true });
    expect(share).toBeGreaterThanOrEqual(0.85);
    expect(share).toBeLessThanOrEqual(0.95);
    expect(widthF).toBeLessThanOrEqual(2.2);
  });

  // What the figure above doesn't promise: one winter tells less, a single spell far less.
  it.each([
    { name: '15 nights of one winter', nights: 15, calendar: strewn(1), from: 2.5, to: 3.1 },
    { name: '15 nights in a row', nights: 15, calendar: inARow, from: 3.5, to: 5 },
    { name: '7 nights of two winters', nights: 7, calendar: strewn(2), from: 3, to: 4.2 },
    { name: '4 nights of two winters', nights: 4, calendar: strewn(2), from: 3, to: 4.2 },
  ])('are in the interval in 85 to 97 % of 1,000 yards: $name', ({ nights, calendar, from, to }) => {
    const { share, widthF } = recovered(1000, nights, calendar);
    expect(share).toBeGreaterThan(0.85);
    expect(share).toBeLessThan(0.97);
    expect(widthF).toBeGreaterThan(from);
    expect(widthF).toBeLessThan(to);
  });

  it('would be missed every other time by 15 nights in a row if they counted as 15', () => {
    expect(recovered(1000, 15, inARow, { range: 'unwidened' }).share).toBeLessThan(0.65);
  });

  it('are found about half as far off with four times the nights', () => {
    const few = recovered(400, 12, strewn(12), { independent: true, range: 'unwidened' }).widthF;
    const many = recovered(400, 48, strewn(12), { independent: true, range: 'unwidened' }).widthF;
    expect(many / few).toBeGreaterThan(0.4);
    expect(many / few).toBeLessThan(0.55);
  });
});

const pair = (day: number, kind: PairedNight['kind'], differenceC: number): PairedNight => ({
  day,
  kind,
  stationC: 0,
  readingC: differenceC,
  differenceC,
  line: day,
});

describe('offsets of kinds of night', () => {
  it('keeps calm and windy apart, and unclear nights out of both', () => {
    const pairs = [0, 40, 80, 120, 400, 440].flatMap((day) => [
      pair(day, 'calm', 2 + day / 1000),
      pair(day + 3, 'windy', 0.5 - day / 1000),
      pair(day + 6, 'unclear', 9),
    ]);
    const { calm, windy, nights } = estimateOffset(pairs);
    expect(nights).toEqual({ calm: 6, windy: 6, unclear: 6 });
    expect(calm!.spread.centreC).toBeCloseTo(2.17, 1);
    expect(windy!.spread.centreC).toBeCloseTo(0.33, 1);
    expect(calm!.nightsToHalve).toBe(18);
  });

  it('says nothing from two nights, and takes the scatter of stations for three and four', () => {
    expect(estimateOffset([pair(0, 'calm', 1), pair(30, 'calm', 2)]).calm).toBeNull();
    const three = estimateOffset([0, 30, 60].map((day) => pair(day, 'calm', 1))).calm!;
    expect(three.scatter).toBe('assumed');
    expect(three.spread.highC - three.spread.lowC).toBeGreaterThan(2);
  });

  it('never claims more than rounding allows: equal differences keep a width', () => {
    const same = estimateOffset([0, 30, 60, 90, 120].map((day) => pair(day, 'calm', 1))).calm!;
    expect(same.spread.centreC).toBe(1);
    expect(same.spread.highC - same.spread.lowC).toBeGreaterThan(0.3);
  });

  it('is in order whatever the nights', () => {
    const anyPair = fc.record({
      day: fc.integer({ min: 0, max: 800 }),
      d: fc.integer({ min: -900, max: 900 }),
    });
    fc.assert(
      fc.property(fc.array(anyPair, { minLength: 3, maxLength: 40 }), (list) => {
        const { spread, unwidened, worthNights } = estimateOffset(
          list.map(({ day, d }) => pair(day, 'calm', d / 100)),
        ).calm!;
        expect(spread.lowC).toBeLessThan(spread.centreC);
        expect(spread.highC).toBeGreaterThan(spread.centreC);
        expect(spread.lowC).toBeLessThanOrEqual(unwidened.lowC);
        expect(worthNights).toBeLessThanOrEqual(list.length);
      }),
    );
  });
});

describe('nights that repeat each other', () => {
  it('count less the nearer they are', () => {
    const every = (days: number): number => stretchOf(Array.from({ length: 15 }, (_, i) => i * days));
    const stretches = [1, 2, 5, 10, 40, 400].map(every);
    expect(stretches).toEqual([...stretches].sort((a, b) => b - a));
    expect(every(400)).toBeCloseTo(1, 5);
    expect(stretchOf([3])).toBe(1);
  });
});
