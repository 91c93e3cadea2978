import { describe, expect, it } from 'vitest';
import { tonight } from '../../../../analysis/cover/tonight.ts';
import { MATURE_TREE } from '../../../../analysis/tree/penalties.ts';
import { celsiusDifferenceToFahrenheit } from '../../../../analysis/units/temperature.ts';
import { forecastSentence, inOtherUnit, readForecast } from '../../../../web/views/cover/tonight-forecast.ts';
import {
  AS_CHOSEN,
  keepTrees,
  readTrees,
  TONIGHT_KEY,
  tonightTrees,
  treeName,
  TREES_MAX,
  type OwnTree,
} from '../../../../web/views/cover/tonight-trees.ts';
import { BARE_TEXTS } from '../../../analysis/answer/bare-texts.ts';
import { memoryStorage } from '../../state/memory-storage.ts';

const tree = (change: Partial<OwnTree> = {}): OwnTree => ({
  ...{ typeId: 'satsuma_owari', ageYears: 10, container: false, fruitLoad: false, spot: 'open', cover: '' },
  ...change,
});

describe('the forecast as typed', () => {
  it('is read in the unit shown: 24 °F, 7 h, 10 mph and −4.4 °C, 7 h, 16 km/h are one night', () => {
    const f = readForecast({ minimum: 24, hours: 7, wind: 10 }, 'F').forecast!;
    expect(f.minimumC).toBeCloseTo(-4.444, 3);
    expect(f.wind).toBeCloseTo(4.4704, 4);
    const c = readForecast({ minimum: -4.4, hours: 7, wind: 16 }, 'C').forecast!;
    expect(c.wind).toBeCloseTo(4.444, 3);
    expect(inOtherUnit({ minimum: 24, hours: 7, wind: 10 }, 'F', 'C')).toEqual({
      ...{ minimum: -4.4, hours: 7, wind: 16 },
    });
    expect(inOtherUnit({ minimum: null, hours: null, wind: null }, 'C', 'F')).toEqual({
      ...{ minimum: null, hours: null, wind: null },
    });
    expect(forecastSentence({ minimum: -4.4, hours: 7, wind: 16 }, 'calm', 'C')).toBe(
      'Lowest −4.4 °C, 7 h below 0 °C, wind 16 km/h: counted as a calm night.',
    );
  });

  it('says what is missing or cannot be, and nothing while nothing is typed', () => {
    const problem = (minimum: number | null, hours: number | null, wind: number | null) =>
      readForecast({ minimum, hours, wind }, 'F').problem;
    expect(problem(null, null, null)).toBeNull();
    expect(problem(null, 3, null)).toMatch(/^The lowest temperature .* missing/);
    expect(problem(24, null, 3)).toMatch(/^The hours below 32 °F are missing/);
    expect(problem(24, 7, null)).toMatch(/^The wind/);
    expect(problem(24, 0, 3)).toMatch(/must be more than 0/);
    expect(problem(40, 3, 3)).toMatch(/no hours below it, but 3/);
    expect(problem(200, 3, 3)).toMatch(/not 200/);
    expect(problem(24, 700, 3)).toMatch(/between 0 and 96, not 700/);
    expect(problem(24, 7, -3)).toMatch(/between 0 and 134 mph, not -3/);
    expect(problem(40, null, 3)).toBeNull();
    for (const [minimum, hours] of [
      [24, 7],
      [32, 0],
      [40, 0],
    ]) {
      const { forecast } = readForecast({ minimum, hours, wind: 3 }, 'F');
      expect(() => tonight(forecast!, [])).not.toThrow();
    }
  });
});

describe("the reader's own trees", () => {
  it('are kept on the device and forgotten with the last', () => {
    const device = memoryStorage();
    const trees = [tree(), tree({ typeId: 'meyer_lemon', container: true, cover: 'cloth-heavy,tied' })];
    keepTrees(device, trees);
    expect(readTrees(device)).toEqual(trees);
    keepTrees(device, []);
    expect(device.held.has(TONIGHT_KEY)).toBe(false);
    expect(readTrees(null)).toEqual([]);
  });

  it('that make no sense are left out', () => {
    const kept = [
      tree(),
      { ...tree(), typeId: 'no_such_type' },
      { ...tree(), ageYears: 0 },
      { ...tree(), cover: 'heat-lamp' },
      { ...tree(), spot: 'moon' },
      null,
      'x',
    ];
    expect(readTrees(memoryStorage({ [TONIGHT_KEY]: JSON.stringify(kept) }))).toEqual([tree()]);
    expect(readTrees(memoryStorage({ [TONIGHT_KEY]: '{"a":' }))).toEqual([]);
    expect(readTrees(memoryStorage({ [TONIGHT_KEY]: '{}' }))).toEqual([]);
    const many = Array.from({ length: 9 }, () => tree());
    expect(readTrees(memoryStorage({ [TONIGHT_KEY]: JSON.stringify(many) }))).toHaveLength(TREES_MAX);
  });

  it('gain what their own spot and cover gain, or those chosen above', () => {
    const trees = [
      tree({ cover: 'cloth-heavy,tied' }),
      tree({ spot: AS_CHOSEN, cover: AS_CHOSEN }),
      tree({ spot: AS_CHOSEN, cover: '', container: true }),
    ];
    const [own, chosen, bare] = tonightTrees(trees, {
      bareTexts: { ...BARE_TEXTS, spot: 'heated-wall' },
      ids: ['cloth-light', 'tied'],
      tree: MATURE_TREE,
    });
    const f = (gainC: number): number => Math.round(celsiusDifferenceToFahrenheit(gainC) * 100) / 100;
    expect(f(own.without.leaf.calmC)).toBe(0);
    expect([f(own.withCover.leaf.calmC), f(own.withCover.leaf.windyC)]).toEqual([7, 2.5]);
    expect([f(chosen.without.leaf.calmC), f(chosen.withCover.leaf.calmC)]).toEqual([3, 6]);
    expect(bare.withCover).toEqual(bare.without);
    expect(bare.tree.container).toBe(true);
  });

  it('come in order of need', () => {
    const trees = [tree(), tree({ typeId: 'mexican_lime' }), tree({ typeId: 'meyer_lemon' })];
    const all = { bareTexts: BARE_TEXTS, ids: [], tree: MATURE_TREE };
    const { forecast } = readForecast({ minimum: 21, hours: 8, wind: 3 }, 'F');
    const order = tonight(forecast!, tonightTrees(trees, all)).trees.map(({ label }) => label);
    expect(order).toEqual(['2', '3', '1']);
  });

  it('have names a gardener would use', () => {
    expect(treeName(tree({ typeId: 'meyer_lemon', ageYears: 3, container: true, fruitLoad: true }))).toBe(
      'Meyer lemon, 3 years, in a pot, with fruit',
    );
    expect(treeName(tree({ typeId: 'meyer_lemon', ageYears: 1 }))).toBe('Meyer lemon, 1 year');
    expect(treeName(tree({ typeId: 'meyer_lemon' }))).toBe('Meyer lemon, mature');
  });
});
