import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lossFigure, type LossFigure } from '../../../analysis/answer/advice-figures.ts';
import { FitShelf } from '../../../analysis/answer/fit-book.ts';
import { findType, type CitrusType } from '../../../analysis/tree/catalogue.ts';
import { NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { NO_GAIN_SPREAD, type GainSpread } from '../../../analysis/winter/gain-spread.ts';
import { certainly } from './certain-gain.ts';
import { inventedSubject } from './invented-subject.ts';

const satsuma = findType('satsuma_owari')!;

/** A type killed somewhere in a band of °C. */
function killedIn(lowC: number, centreC: number, highC: number): CitrusType {
  const kill = { ...satsuma.thresholds.kill, lowC, centreC, highC };
  return { ...satsuma, thresholds: { ...satsuma.thresholds, kill } };
}

/** The figures of a loss at an invented place, where nothing is gained unless told. */
function placed(winters: number, middleC: number) {
  const subject = inventedSubject(winters, [], middleC);
  const shelves = { ranged: new FitShelf(subject, 100), plain: new FitShelf(subject, 20) };
  return (level: 'leaf' | 'kill', type = satsuma, gain: GainSpread = NO_GAIN_SPREAD): LossFigure =>
    lossFigure(
      { type, tree: MATURE_TREE, gains: { ...NO_LEVEL_GAIN_SPREADS, [level]: gain } },
      level,
      shelves,
    );
}
const rareEnd = ({ long }: LossFigure): number => long ?? Infinity;

/** Each alone moves the ends: the side that harms the short one, the side that helps the rare one. */
describe('both ends of how often a loss comes', () => {
  const figure = placed(60, -4);

  test('reach to what the ends of a type’s own threshold make of it', () => {
    const sure = figure('kill', killedIn(-9, -9, -9));
    const tenderer = figure('kill', killedIn(-9, -9, -6));
    const hardier = figure('kill', killedIn(-14, -9, -9));
    expect(tenderer.headline).toEqual(sure.headline);
    expect(tenderer.short.winters).toBeLessThan(sure.short.winters);
    // Where it is -6 °C that kills, this is how often.
    const at6 = figure('kill', killedIn(-6, -6, -6)).headline.period!;
    expect(tenderer.short.winters).toBeCloseTo(at6, 9);
    expect(hardier.short).toEqual(sure.short);
    expect(rareEnd(hardier)).toBeGreaterThan(rareEnd(sure));
    expect(tenderer.long).toBe(sure.long);
  });

  test('reach to what the ends of a gain make of it', () => {
    const spread = (lowC: number, highC: number): GainSpread => ({
      calm: { lowC, centreC: 3, highC },
      windy: { lowC, centreC: 3, highC },
    });
    const sure = figure('leaf', satsuma, certainly(3, 3));
    const less = figure('leaf', satsuma, spread(0, 3));
    const more = figure('leaf', satsuma, spread(3, 8));
    expect(less.headline).toEqual(sure.headline);
    expect(less.short.winters).toBeCloseTo(figure('leaf').headline.period!, 9);
    expect(less.short.winters).toBeLessThan(sure.short.winters);
    expect(less.long).toBe(sure.long);
    expect(more.short).toEqual(sure.short);
    expect(rareEnd(more)).toBeGreaterThan(rareEnd(sure));
  });

  test('the short one is never rarer than the count, nor than twice the record', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 70 }),
        fc.double({ min: -9, max: 6, noNaN: true }),
        fc.constantFrom('leaf', 'kill'),
        (winters, middleC, level) => {
          const { short, hits } = placed(winters, middleC)(level);
          expect(short.winters).toBeGreaterThanOrEqual(1);
          expect(short.winters).toBeLessThanOrEqual(2 * winters);
          if (hits > 0) expect(short.winters).toBeLessThanOrEqual(winters / hits);
        },
      ),
      { numRuns: 60 },
    );
  });
});
