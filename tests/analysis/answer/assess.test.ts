import { describe, expect, it, vi } from 'vitest';
import { assess, rankTypes, type AssessRequest } from '../../../analysis/answer/assess.ts';
import { assessmentJson } from '../../../analysis/answer/assessment-json.ts';
import type { Assessment, LevelAnswer } from '../../../analysis/answer/assessment.ts';
import { FitShelf } from '../../../analysis/answer/fit-book.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { atEveryLevel, NO_LEVEL_GAIN_SPREADS } from '../../../analysis/tree/level-gains.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../../../analysis/units/temperature.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';
import { certainly } from './certain-gain.ts';
import { inventedWinters } from './invented-winters.ts';

const subjectOf = (winters: WinterTable) => ({
  place: { label: 'Nowhere', lat: 31, lon: -42, elevation_m: 5, basis: 'station' as const },
  winters,
  neighbours: [],
  evidence: [],
  notes: [],
});
const WHOLE_CATALOGUE: AssessRequest = {
  types: CITRUS_TYPES,
  levels: LEVELS,
  tree: MATURE_TREE,
  gains: NO_LEVEL_GAIN_SPREADS,
  years: 10,
};
function answer(winters: WinterTable, request: Partial<AssessRequest> = {}): Assessment {
  return assess(subjectOf(winters), { ...WHOLE_CATALOGUE, ...request });
}
const levelOf = (assessment: Assessment, id: string, level: (typeof LEVELS)[number]): LevelAnswer =>
  assessment.types.find((type) => type.id === id)!.levels.find((entry) => entry.level === level)!;

describe('the answer for a place', () => {
  const winters = inventedWinters(60, -3);

  it('counts the complete winters whose value is at or below threshold plus penalties, and lists the others apart', () => {
    const holes: WinterTable = {
      ...winters,
      complete: winters.complete.map((_, w) => (w % 10 === 0 ? 0 : 1)),
    };
    const wood = levelOf(answer(holes, { tree: { ...MATURE_TREE, ageYears: 1 } }), 'satsuma_owari', 'wood');
    // Counted here from the levels themselves: 18 °F for 4 h, 5.5 °F sooner for a tree of the first year.
    const limit = Math.round(100 * fahrenheitToCelsius(18 + 5.5));
    const hit = [...winters.winter].filter(
      (_, w) => Math.min(holes.coldest[0][4][w], holes.coldest[1][4][w]) <= limit,
    );
    expect(hit.length).toBeGreaterThan(3);
    expect([...wood.counted.hit_winters, ...wood.counted.hit_incomplete].sort()).toEqual(hit);
    expect(wood.counted.hit_incomplete.every((winter) => (winter - 1960) % 10 === 0)).toBe(true);
    expect(wood.counted.winters).toBe(54);
    expect(wood.counted.period).toBeCloseTo(54 / wood.counted.hits, 12);
    expect(wood.penalties_c.age).toBeCloseTo(5.5 / 1.8, 12);
  });

  it('keeps a threshold of 28 °F hit by a night stored at -2.22 °C, and not by one at -2.21', () => {
    const oneHit = inventedWinters(40, 5, 1, [-2.22 - 1, -2.21 - 1, ...new Array<number>(38).fill(5)]);
    const fruit = levelOf(answer(oneHit), 'valencia_orange', 'fruit');
    expect(celsiusToFahrenheit(fruit.threshold_c)).toBeCloseTo(28, 9);
    expect(fruit.counted.hit_winters).toEqual([1960]);
  });

  it('is never rarer for a warmer threshold, hits for hits and period for period', () => {
    const { types } = answer(winters);
    for (const { levels } of types) {
      for (const a of levels) {
        for (const b of levels) {
          if (a.hours !== b.hours || a.threshold_c < b.threshold_c) continue;
          expect(a.counted.hits).toBeGreaterThanOrEqual(b.counted.hits);
          expect(a.fitted!.period!).toBeLessThanOrEqual((b.fitted!.period ?? Infinity) + 1e-9);
        }
      }
    }
    // A period beyond twice the record is a bound, not an estimate, so headlines are compared where both are estimates.
    const estimates = types
      .flatMap((type) => type.levels)
      .filter(({ headline }) => headline.basis === 'fitted');
    for (const a of estimates) {
      for (const b of estimates) {
        if (a.hours === b.hours && a.threshold_c > b.threshold_c) {
          expect(a.headline.period!).toBeLessThanOrEqual(b.headline.period! + 1e-9);
        }
      }
    }
  });

  it('is ranked with the fits of the hours that thresholds are for, and no others', () => {
    const shelf = new FitShelf(subjectOf(winters));
    const asked = vi.spyOn(shelf.forGains(NO_GAINS), 'forHours');
    const ranking = rankTypes(subjectOf(winters), WHOLE_CATALOGUE, shelf);
    const named = CITRUS_TYPES.flatMap(({ thresholds }) => LEVELS.map((level) => thresholds[level].hours));
    expect(new Set(asked.mock.calls.flat())).toEqual(new Set(named));
    expect({ ...ranking, cold: answer(winters).cold }).toEqual(answer(winters));
  });

  it('says the same of a type however many others are asked about', () => {
    const subject = subjectOf(winters);
    const alone = CITRUS_TYPES.map(
      (type) => rankTypes(subject, { ...WHOLE_CATALOGUE, types: [type] }).types[0],
    );
    expect(rankTypes(subject, WHOLE_CATALOGUE).types).toEqual(alone);
  });

  it('holds the period inside its range, and claims nothing beyond twice the record', () => {
    for (const { headline, counted } of answer(winters).types.flatMap((type) => type.levels)) {
      expect(headline.low!).toBeLessThanOrEqual(headline.period!);
      if (headline.high !== null) expect(headline.high).toBeGreaterThanOrEqual(headline.period!);
      expect(headline.period!).toBeLessThanOrEqual(2 * counted.winters);
      if (headline.basis === 'beyond') expect(headline.high).toBeNull();
    }
  });

  it('gives the same numbers every time', () => {
    expect(answer(winters)).toEqual(answer(winters));
  });

  it('lets a gain on calm nights help only until the windy night is the coldest', () => {
    const covered = answer(winters, { gains: atEveryLevel(certainly(5, 0)) });
    const open = answer(winters);
    covered.history.forEach((winter, w) => {
      const [calm, windy] = [0, 1].map((kind) => winters.coldest[kind][4][w] / 100);
      expect(winter.m_c['4']).toBeCloseTo(Math.min(calm + 5, windy), 9);
      expect(winter.m_c['4']!).toBeGreaterThanOrEqual(open.history[w].m_c['4']!);
    });
  });

  it('offers depth-duration levels that are colder for longer periods, warmer for more hours, none beyond twice the record', () => {
    const { cold } = answer(inventedWinters(22, -3));
    expect(cold.filter((level) => level.period_winters === 50).every((level) => level.level_c === null)).toBe(
      true,
    );
    for (const a of cold) {
      for (const b of cold) {
        if (a.level_c === null || b.level_c === null) continue;
        if (a.hours === b.hours && a.period_winters < b.period_winters)
          expect(b.level_c).toBeLessThan(a.level_c);
        if (a.period_winters === b.period_winters && a.hours < b.hours)
          expect(b.level_c).toBeGreaterThanOrEqual(a.level_c);
      }
    }
  });

  it('reads longer cold as worse by the published-as-design-choice shift', () => {
    // Handbook, fruit-and-duration.md section 3: -2 °F at 1 h, 0 at 4 h, +1.1 at 8 h, +2.9 at 24 h. A cold that hardly
    // warms over 24 hours hits a limit 2.9 °F below its level.
    const flat = inventedWinters(30, 0, 1, new Array<number>(30).fill(-6));
    const coldest = flat.coldest.map((kind) => kind.map((column) => column.map(() => -600)));
    const justMissed = findType('clementine')!; // wood at 20 °F = -6.67 °C, 0.67 °C (1.2 °F) below the cold
    const wood = levelOf(answer({ ...flat, coldest }, { types: [justMissed] }), 'clementine', 'wood');
    expect(wood.counted.hits).toBe(0);
    expect(wood.with_duration.hits).toBe(30);
  });
});

describe('short and mild records', () => {
  it('gives three winters their counts, no fit and a warning', () => {
    const short = answer(inventedWinters(3, -4));
    const fruit = levelOf(short, 'navel_orange', 'fruit');
    expect(fruit.fitted).toBeNull();
    expect(['counted', 'not seen']).toContain(fruit.headline.basis);
    expect(short.notes.join(' ')).toContain('Only 3 complete winters');
    expect(short.cold.every((level) => level.level_c === null)).toBe(true);
    expect(short.trend).toBeNull();
  });

  it('says of a place without a cold night: not seen, could be as often as 1 in L', () => {
    const mild = answer(inventedWinters(8, 0, 1, new Array<number>(8).fill(NaN)));
    const { counted, headline } = levelOf(mild, 'citron', 'leaf');
    expect(counted).toMatchObject({ hits: 0, winters: 8, period: null, high: null });
    // Wilson's upper end for 0 of 8 at 90 %: z²/(n+z²) with z = 1.6449 is 0.2527, so 1 in 3.96.
    expect(headline).toMatchObject({ period: null, high: null, basis: 'not seen' });
    expect(headline.low!).toBeCloseTo((8 + 2.705543) / 2.705543, 4);
    expect(mild.history.every((winter) => winter.m_c['4'] === null)).toBe(true);
  });

  it('answers a record without one complete winter with nothing but its incomplete hits', () => {
    const winters = inventedWinters(4, -8);
    const none: WinterTable = {
      ...winters,
      complete: new Uint8Array(4),
      reason: new Array<string>(4).fill('only 3 of 151 nights'),
    };
    const result = answer(none);
    expect(result.winters).toMatchObject({ used: 0, first: null, last: null });
    expect(result.winters.left_out).toHaveLength(4);
    const leaf = levelOf(result, 'mexican_lime', 'leaf');
    expect(leaf.counted).toMatchObject({ hits: 0, winters: 0, period: null });
    expect(leaf.counted.hit_incomplete.length).toBeGreaterThan(0);
    expect(leaf.chance_in_years.p).toBeNull();
    expect(leaf.nights_per_winter).toBeNull();
  });
});

describe('assess --json', () => {
  const json = JSON.parse(JSON.stringify(assessmentJson(answer(inventedWinters(40, -3))))) as Record<
    string,
    never
  >;
  const keys = (value: object) => Object.keys(value).sort();

  // The shape is fixed by the design's section 6.
  it('has exactly the fields of the design', () => {
    const shape = json as unknown as Assessment;
    expect(keys(json)).toEqual(['cold', 'history', 'place', 'types', 'winters']);
    expect(keys(shape.place)).toEqual(['basis', 'elevation_m', 'label', 'lat', 'lon']);
    expect(keys(shape.winters)).toEqual(['first', 'last', 'left_out', 'used']);
    expect(keys(shape.history[0])).toEqual(['complete', 'm_c', 'winter']);
    expect(Object.keys(shape.history[0].m_c)).toEqual([
      '0',
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '8',
      '10',
      '12',
      '18',
      '24',
    ]);
    expect(keys(shape.cold[0])).toEqual(['high_c', 'hours', 'level_c', 'low_c', 'period_winters']);
    expect(keys(shape.types[0])).toEqual(['id', 'levels', 'name', 'use']);
    const [level] = shape.types[0].levels;
    expect(keys(level)).toEqual(
      [
        'level', 'threshold_c', 'hours', 'penalties_c', 'gain_calm_c', 'gain_windy_c', 'counted', 'fitted', 'headline',
        'if_threshold', 'with_duration', 'chance_in_years', 'nights_per_winter',
      ].sort(), // prettier-ignore
    );
    expect(keys(level.counted)).toEqual([
      'high',
      'hit_incomplete',
      'hit_winters',
      'hits',
      'low',
      'period',
      'winters',
    ]);
    expect(keys(level.fitted!)).toEqual(['high', 'low', 'period']);
    expect(keys(level.headline)).toEqual(['agrees', 'basis', 'high', 'low', 'period']);
    expect(keys(level.if_threshold.low)).toEqual(['period', 'threshold_c']);
    expect(keys(level.with_duration)).toEqual(['hits', 'period']);
    expect(keys(level.chance_in_years)).toEqual(['high', 'low', 'p', 'years']);
  });

  it('has 37 types of four levels and every duration at every period', () => {
    const shape = json as unknown as Assessment;
    expect(shape.types).toHaveLength(37);
    expect(shape.types.every((type) => type.levels.length === 4)).toBe(true);
    expect(shape.cold).toHaveLength(12 * 5);
  });

  it('holds no NaN and no infinity where JSON has null', () => {
    expect(JSON.stringify(json)).not.toMatch(/NaN|Infinity/);
  });
});
