import { describe, expect, it } from 'vitest';
import { rankTypes } from '../../../analysis/answer/assess.ts';
import { FitShelf } from '../../../analysis/answer/fit-book.ts';
import { fittedAt } from '../../../analysis/answer/level-answer.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { atEveryLevel, NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { certainly } from './certain-gain.ts';
import { inventedWinters } from './invented-winters.ts';

/** A shorter period by less than this is a step between two rungs of the ladder, not a crossing of curves. */
const BETWEEN_RUNGS = 0.985;

const subjectOf = (seed: number) => ({
  place: { label: 'Nowhere', lat: 31, lon: -42, elevation_m: 5, basis: 'station' as const },
  winters: inventedWinters(60, -3, seed),
  neighbours: [inventedWinters(60, -3.5, seed + 50), inventedWinters(60, -2, seed + 51)],
  evidence: [],
  notes: [],
});

/** Winters whose calm and windy nights have nothing to do with each other, so that a gain on calm ones reorders them. */
function calmAndWindyApart(seed: number): WinterTable {
  const [calm, windy] = [inventedWinters(60, 1, seed), inventedWinters(60, 3, seed + 1000)];
  const coldestOf = ({ coldest }: WinterTable): Int16Array[] =>
    coldest[0].map((levels, j) => levels.map((level, w) => Math.min(level, coldest[1][j][w])));
  return { ...calm, coldest: [coldestOf(calm), coldestOf(windy), calm.coldest[2]] };
}

describe('the headline under a larger gain', () => {
  const types = CITRUS_TYPES.filter((_, i) => i % 4 === 0);
  const request = { types, levels: LEVELS, tree: MATURE_TREE, years: 10, draws: 20 };

  it('is never shorter, whatever curves are drawn anew, and the count never gets more hits', () => {
    const random = seededRandom(11);
    let compared = 0;
    for (let seed = 1; seed <= 6; seed++) {
      const subject = subjectOf(seed);
      const shelf = new FitShelf(subject, 20);
      const calmC = 3 * random.uniform();
      const windyC = random.uniform();
      const answers = [
        NO_LEVEL_GAIN_SPREADS,
        atEveryLevel(certainly(calmC, 0)),
        atEveryLevel(certainly(calmC, windyC)),
        atEveryLevel(certainly(calmC + 1.5, windyC + 0.8)),
      ].map((gains) => rankTypes(subject, { ...request, gains }, shelf).types.flatMap((type) => type.levels));
      for (let more = 1; more < answers.length; more++) {
        answers[more].forEach((covered, i) => {
          const before = answers[more - 1][i];
          expect(covered.counted.hits).toBeLessThanOrEqual(before.counted.hits);
          // A bound ("rarer than") is no period: it only says that the curve lies beyond twice the record.
          if (before.headline.basis === 'beyond') expect(covered.headline.basis).not.toBe('counted');
          if (covered.headline.basis !== 'fitted' || before.headline.basis !== 'fitted') return;
          compared++;
          expect(covered.headline.period! / before.headline.period!).toBeGreaterThan(BETWEEN_RUNGS);
          expect(covered.headline.low!).toBeLessThanOrEqual(covered.headline.period!);
        });
      }
    }
    expect(compared).toBeGreaterThan(100);
  });

  it('takes over the shorter period where the curve of a larger gain comes out more frequent', () => {
    const subject = { ...subjectOf(1), winters: calmAndWindyApart(9), neighbours: [] };
    const shelf = new FitShelf(subject, 20);
    const [smaller, larger] = [2.4, 3.2].map((calmC) => shelf.forGains({ calmC, windyC: 0 }).forHours(4));
    const limitC = -8;
    const [raw, rawLarger] = [smaller, larger].map((book) => book.fit!.returnPeriod(limitC).period);
    expect(rawLarger / raw).toBeLessThan(0.97);
    const [told, toldLarger] = [smaller, larger].map((book) => fittedAt(book, limitC)!);
    expect(told.period).toBeLessThan(raw);
    expect(toldLarger.period / told.period).toBeGreaterThan(BETWEEN_RUNGS);
    expect(told.low).toBeLessThanOrEqual(told.period);
  });

  it('stays the curve at the gain itself unless a curve at a larger gain is shorter', () => {
    const subject = subjectOf(3);
    const levels = rankTypes(subject, { ...request, gains: atEveryLevel(certainly(1, 0.5)) }).types.flatMap(
      (type) => type.levels,
    );
    const fitted = levels.filter(({ headline }) => headline.basis === 'fitted');
    expect(fitted.length).toBeGreaterThan(8);
    for (const level of fitted) {
      expect(level.headline.period!).toBeLessThanOrEqual(level.fitted!.period!);
      expect(level.headline.period! / level.fitted!.period!).toBeGreaterThan(0.6);
    }
  });
});
