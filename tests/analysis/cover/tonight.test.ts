import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverGains } from '../../../analysis/cover/cover-gains.ts';
import { sustainedTonightC } from '../../../analysis/cover/night-shape.ts';
import { tonight, type TonightTree } from '../../../analysis/cover/tonight.ts';
import { InputError } from '../../../analysis/records/input-error.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import { atEveryLevel } from '../../../analysis/tree/level-gains.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import { fahrenheitToCelsius } from '../../../analysis/units/temperature.ts';
import { gainsAt } from '../../../analysis/winter/gain-spread.ts';
import { NO_GAINS } from '../../../analysis/winter/winter-minima.ts';

function treeOf(id: string, cover: string[] = [], state: Partial<typeof MATURE_TREE> = {}): TonightTree {
  const gains = coverGains(cover);
  return {
    label: id,
    type: findType(id)!,
    tree: { ...MATURE_TREE, ...state },
    without: atEveryLevel(NO_GAINS),
    withCover: Object.fromEntries(
      LEVELS.map((level) => [level, gainsAt(gains[level], 'centreC')]),
    ) as TonightTree['withCover'],
    cover,
  };
}
const HARD = { minimumC: fahrenheitToCelsius(21), hoursBelowFreezing: 12, wind: 'calm' } as const;

describe('the shape of a night', () => {
  it('is the minimum at once, freezing after the hours below it', () => {
    const night = { minimumC: -5, hoursBelowFreezing: 9 };
    expect(sustainedTonightC(night, 0)).toBe(-5);
    expect(sustainedTonightC(night, 9)).toBeCloseTo(0, 12);
  });

  it('never falls with the hours, never lies under the minimum', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: -0.1, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 24, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (minimumC, hoursBelowFreezing, hours, more) => {
          const night = { minimumC, hoursBelowFreezing };
          const level = sustainedTonightC(night, hours);
          expect(level).toBeGreaterThanOrEqual(minimumC);
          expect(sustainedTonightC(night, hours + more)).toBeGreaterThanOrEqual(level - 1e-9);
        },
      ),
    );
  });
});

describe('tonight', () => {
  it('puts the neediest first and the warning in force before everything', () => {
    const { trees, safety } = tonight(HARD, [
      treeOf('satsuma_owari'),
      treeOf('mexican_lime'),
      treeOf('navel_orange'),
    ]);
    expect(trees.map(({ label }) => label)).toEqual(['mexican_lime', 'navel_orange', 'satsuma_owari']);
    expect(safety[0]).toMatch(/^A forecast or warning in force goes before/);
    expect(trees[0].worstBare).toBe('kill');
    expect(trees[0].need).toMatch(/likely to lose .*its life.*No cover is chosen.*Bank soil/);
  });

  it('judges a level by its own hours and limit', () => {
    const { trees } = tonight(HARD, [treeOf('navel_orange')]);
    const wood = trees[0].levels.find(({ level }) => level === 'wood')!;
    expect(wood.hours).toBe(4);
    expect(wood.limitC).toBe(-4.44);
    // 21 °F with 12 hours of frost: four hours at or below 32 - 11 (1 - (1/3)^1.2) = 23.94 °F, under the limit of 24 °F.
    expect(wood.openC).toBe(-4.48);
    expect(wood.bare).toBe('lost');
  });

  it('tells what the cover changes, and that it fails in wind untied', () => {
    // 23.94 °F and 5 + 1 °F: 1.9 °F above the fruit's 28 °F.
    const loose = treeOf('navel_orange', ['cloth-medium', 'watered-soil']);
    const calm = tonight(HARD, [loose]);
    expect(calm.trees[0].worstBare).toBe('wood');
    expect(calm.trees[0].worstCovered).toBe('fruit');
    const windy = tonight({ ...HARD, wind: 6 }, [loose]);
    expect(windy.kind).toBe('windy');
    expect(windy.trees[0].worstCovered).toBe('wood');
    expect(windy.timetable.some(({ what }) => /not tied down/.test(what))).toBe(true);
    expect(tonight({ ...HARD, wind: 4.4 }, [loose]).kind).toBe('calm');
  });

  it('orders the day: mulch, water, graft, cover, lights, uncover', () => {
    const cover = ['cloth-heavy', 'tied', 'lights', 'lights-confirmed', 'watered-soil', 'soil-bank'];
    const { timetable } = tonight(HARD, [treeOf('meyer_lemon', cover), treeOf('trifoliate_orange', cover)]);
    const at = (what: RegExp): number => timetable.findIndex((entry) => what.test(entry.what));
    const order = [
      /^Rake mulch/,
      /^Soak/,
      /over the graft/,
      /^Put the cover on/,
      /lights on/,
      /^Take the cover off/,
    ].map(at);
    expect(order).not.toContain(-1);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    const [{ trees }] = timetable.filter(({ what }) => /over the graft/.test(what));
    expect(trees).toContain('meyer_lemon');
  });

  it('switches no light on that is not confirmed', () => {
    const unsafe = { ...treeOf('meyer_lemon', ['cloth-light']), cover: ['cloth-light', 'lights'] };
    const { trees, timetable } = tonight(HARD, [unsafe]);
    expect(trees[0].refused[0]).toMatch(/once confirmed/);
    expect(timetable.filter(({ what }) => /lights on/i.test(what))).toEqual([]);
  });

  it('asks nothing for a tree that is out of danger', () => {
    const { trees, timetable } = tonight({ minimumC: 6, hoursBelowFreezing: 0, wind: 'calm' }, [
      treeOf('satsuma_owari', ['cloth-heavy']),
    ]);
    expect(trees[0]).toMatchObject({ worstBare: null, need: 'Needs nothing tonight.' });
    expect(timetable).toEqual([]);
  });

  it('keeps two trees of one name apart', () => {
    const two = [
      treeOf('mexican_lime', ['cloth-light']),
      { ...treeOf('trifoliate_orange'), label: 'mexican_lime' },
    ];
    const { timetable } = tonight({ minimumC: -2.5, hoursBelowFreezing: 5, wind: 'calm' }, two);
    expect(timetable[0].trees).toEqual(['mexican_lime']);
  });

  it('sends a pot indoors that no cover saves', () => {
    expect(tonight(HARD, [treeOf('mexican_lime', [], { container: true })]).trees[0].need).toMatch(
      /pot indoors/,
    );
  });

  it.each([
    [{ minimumC: 1, hoursBelowFreezing: 3, wind: 'calm' as const }, /no hours below/],
    [{ minimumC: -1, hoursBelowFreezing: 0, wind: 'calm' as const }, /more than 0/],
    [{ minimumC: NaN, hoursBelowFreezing: 3, wind: 'calm' as const }, /between -40/],
    [{ minimumC: -1, hoursBelowFreezing: 200, wind: 'calm' as const }, /between 0 and 96/],
    [{ minimumC: -1, hoursBelowFreezing: 2, wind: -3 }, /wind must lie/],
  ])('refuses %j', (forecast, reason) => {
    expect(() => tonight(forecast, [])).toThrow(InputError);
    expect(() => tonight(forecast, [])).toThrow(reason);
  });

  it('more cold, more frost never lessens a danger', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: -0.5, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (minimumC, hoursBelowFreezing, colder, longer) => {
          const one = treeOf('meyer_lemon', ['cloth-medium']);
          const mild = tonight({ minimumC, hoursBelowFreezing, wind: 'calm' }, [one]).trees[0];
          const hard = tonight(
            { minimumC: minimumC - colder, hoursBelowFreezing: hoursBelowFreezing + longer, wind: 'calm' },
            [one],
          ).trees[0];
          // From freezing on a colder minimum makes the rise steeper: only levels of hours within the frost compare.
          mild.levels.forEach((level, i) => {
            if (level.hours > hoursBelowFreezing) return;
            expect(hard.levels[i].bareMarginC).toBeLessThanOrEqual(level.bareMarginC + 0.011);
            expect(hard.levels[i].coveredMarginC).toBeLessThanOrEqual(level.coveredMarginC + 0.011);
          });
        },
      ),
    );
  });
});
