import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isCapped, JOINT_CAP, jointGain, orAlone } from '../../../analysis/answer/joint-gain.ts';
import { fahrenheitDifferenceToCelsius } from '../../../analysis/units/temperature.ts';
import { NO_GAIN_SPREAD, type GainSpread, type Spread } from '../../../analysis/winter/gain-spread.ts';
import { certainly } from './certain-gain.ts';

const F = fahrenheitDifferenceToCelsius;
const spreadF = (lowF: number, centreF: number, highF: number): Spread => ({
  lowC: F(lowF),
  centreC: F(centreF),
  highC: F(highF),
});

/** Spots as the tables have them, capped at +8 °F calm and +3 °F windy; covers never negative, capped at 10 and 5 °F. */
const spread = (leastF: number, mostF: number) =>
  fc
    .tuple(
      fc.double({ min: leastF, max: mostF, noNaN: true }),
      fc.double({ min: leastF, max: mostF, noNaN: true }),
      fc.double({ min: leastF, max: mostF, noNaN: true }),
    )
    .map((ends) => ends.sort((a, b) => a - b))
    .map(([low, centre, high]) => spreadF(low, centre, high));
const spot = fc.record({ calm: spread(-8, 8), windy: spread(-2, 3) });
const cover = fc.record({ calm: spread(0, 10), windy: spread(0, 5) });

describe('a spot and a cover on one tree', () => {
  it('add up to 10 °F on calm and 5 °F on windy nights at most (design 3.7)', () => {
    const both = jointGain(certainly(F(6), F(2)), certainly(F(8), F(4)));
    expect(both.calm.centreC).toBeCloseTo(F(10), 9);
    expect(both.windy.centreC).toBeCloseTo(F(5), 9);
    expect(isCapped(certainly(F(6), F(2)), certainly(F(8), F(4)))).toBe(true);
    expect(isCapped(certainly(F(3), F(1)), certainly(F(5), F(2)))).toBe(false);
  });

  it('let the cold of a hollow eat up what a cover gains', () => {
    const both = jointGain({ calm: spreadF(-8, -5.5, -3), windy: spreadF(0, 0, 0) }, certainly(F(7), 0));
    expect(both.calm.centreC).toBeCloseTo(F(1.5), 9);
    expect(both.calm.lowC).toBeCloseTo(F(-1), 9);
    expect(both.calm.highC).toBeCloseTo(F(4), 9);
  });

  it('are uncertain as two things that know nothing of each other: 3 and 4 make 5', () => {
    const both = jointGain(
      { calm: spreadF(-1, 2, 5), windy: spreadF(0, 0, 0) },
      { calm: spreadF(0, 4, 8), windy: spreadF(0, 0, 0) },
    );
    expect(both.calm.centreC - both.calm.lowC).toBeCloseTo(F(5), 9);
  });

  it('leave a spot that was measured warmer than the cap as it was measured', () => {
    expect(jointGain(certainly(F(12), 0), certainly(F(4), 0)).calm.centreC).toBeCloseTo(F(12), 9);
  });

  it('keep low end, centre and high end in order, and no cover changes nothing', () => {
    fc.assert(
      fc.property(spot, cover, (a, b) => {
        const both = jointGain(a, b);
        for (const { lowC, centreC, highC } of [both.calm, both.windy]) {
          expect(lowC).toBeLessThanOrEqual(centreC + 1e-12);
          expect(centreC).toBeLessThanOrEqual(highC + 1e-12);
        }
        expect(both.calm.highC).toBeLessThanOrEqual(JOINT_CAP.calmC + 1e-12);
        expect(both.windy.highC).toBeLessThanOrEqual(JOINT_CAP.windyC + 1e-12);
        const bare = jointGain(a, NO_GAIN_SPREAD);
        expect(bare.calm.centreC).toBeCloseTo(a.calm.centreC, 12);
        expect(bare.windy.lowC).toBeCloseTo(a.windy.lowC, 12);
      }),
    );
  });

  it('never lose by more cover', () => {
    fc.assert(
      fc.property(spot, cover, fc.double({ min: 0, max: 5, noNaN: true }), (a, b, moreC) => {
        const more: GainSpread = {
          calm: {
            lowC: b.calm.lowC + moreC,
            centreC: b.calm.centreC + moreC,
            highC: b.calm.highC + moreC,
          },
          windy: b.windy,
        };
        expect(jointGain(a, more).calm.centreC).toBeGreaterThanOrEqual(jointGain(a, b).calm.centreC);
      }),
    );
  });
});

describe('what holds by its own warmth', () => {
  it('counts where it is the larger, and leaves the air as it is where there is none', () => {
    const air: GainSpread = { calm: spreadF(-8, -5.5, -3), windy: spreadF(0, 0, 0) };
    expect(orAlone(air, NO_GAIN_SPREAD)).toEqual(air);
    const banked = orAlone(air, certainly(F(10), F(10)));
    expect(banked.calm.centreC).toBeCloseTo(F(10), 9);
    expect(banked.windy.centreC).toBeCloseTo(F(5), 9);
    expect(orAlone(certainly(F(9), 0), certainly(F(3), F(3))).calm.centreC).toBeCloseTo(F(9), 9);
  });
});
