import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyHarm, killAge, linkHarm, lossBits } from '../../../../analysis/tree/life/harm.ts';
import { livesOf } from '../../../../analysis/tree/life/lives-of.ts';
import { firstCropWinter, treeYears } from '../../../../analysis/tree/life/tree-years.ts';
import { anyMargins, anyTree, notComplete, quiet, raised, withLoss } from './made-margins.ts';

const TREE = { reading: 'hardened', startAgeYears: 1, firstCropYear: 3 } as const;
const OLD = { ...TREE, startAgeYears: 5 };
const first = (...args: Parameters<typeof livesOf>) => livesOf(...args).lives[0]!;

describe('courses worked by hand', () => {
  test('nothing happens: too young, then a crop a winter', () => {
    expect(first(quiet(6), TREE)).toMatchObject({
      course: '..cccc',
      fate: 'living',
      years: 6,
      crops: 4,
      winter: 1951,
    });
    expect(livesOf(quiet(3), TREE).lives.map((life) => life.course)).toEqual(['..c', '..', '.']);
  });

  test('a tree planted older bears sooner', () => {
    expect(first(quiet(4), { ...TREE, startAgeYears: 2 }).course).toBe('.ccc');
    expect(first(quiet(4), OLD).course).toBe('cccc');
    expect(firstCropWinter({ startAgeYears: 3, firstCropYear: 6 })).toBe(4);
  });

  test('fruit: that crop', () => {
    expect(first(withLoss(quiet(6), 3, 'fruit'), TREE)).toMatchObject({ course: '..cfcc', crops: 3 });
    // A tree without a crop has none to lose.
    expect(first(withLoss(quiet(4), 1, 'fruit'), TREE).course).toBe('..cc');
  });

  test("leaf: the next winter's crop; that winter's was picked before", () => {
    expect(first(withLoss(quiet(6), 3, 'leaf'), TREE)).toMatchObject({ course: '..clrc', crops: 3 });
  });

  test('wood: three crops', () => {
    expect(first(withLoss(quiet(8), 3, 'wood'), TREE)).toMatchObject({ course: '..cwrrrc', crops: 3 });
    const again = withLoss(withLoss(quiet(9), 2, 'wood'), 4, 'wood');
    expect(first(again, TREE)).toMatchObject({ course: '..wrwrrrc' });
    // A leaf hit while wood grows back doesn't shorten the wait.
    expect(first(withLoss(withLoss(quiet(8), 3, 'wood'), 4, 'leaf'), TREE).course).toBe('..cwlrrc');
  });

  test('kill: the end; the crop of that winter counts if it was in', () => {
    const killed = withLoss(quiet(6), 4, 'kill');
    expect(first(killed, TREE)).toMatchObject({ course: '..cck', fate: 'killed', years: 4, crops: 3 });
    expect(first(withLoss(killed, 4, 'fruit'), TREE)).toMatchObject({ course: '..cck', crops: 2 });
    expect(livesOf(killed, TREE).lives[5]).toMatchObject({ course: '.', fate: 'living', years: 1 });
  });

  test('bloom or new growth: the next crop, in its own count only', () => {
    const life = first(withLoss(quiet(6), 2, 'flush'), TREE);
    expect(life).toMatchObject({ course: '..cbcc', crops: 4, cropsInTen: 4, cropsInTenWithBloom: 3 });
  });

  test('winters that are not complete: losses count, crops do not, the fate of a tree killed there is unknown', () => {
    expect(first(notComplete(quiet(6), 1, 3), TREE)).toMatchObject({ course: '.?c?cc', crops: 3, years: 6 });
    const hit = notComplete(withLoss(withLoss(quiet(7), 2, 'wood'), 6, 'kill'), 2, 6);
    expect(first(hit, TREE)).toMatchObject({ course: '..wrrrk', fate: 'unknown', years: 6, crops: 0 });
    // None is planted in.
    expect(livesOf(hit, TREE).lives.map(({ winter }) => winter)).toEqual([1951, 1952, 1954, 1955, 1956]);
  });

  test('a tree is tender by its age, and as in its third year while wood grows back', () => {
    const tender = withLoss(quiet(9), 6, 'kill', { oldestClass: 1 });
    // From five years on a tree stands this; a tree of one to three years doesn't.
    expect(first(tender, OLD).fate).toBe('living');
    expect(livesOf(tender, TREE).lives.map(({ fate }) => fate === 'killed')).toEqual(
      [0, 1, 2, 3, 4, 5, 6, 7, 8].map((start) => start <= 6 && 6 - start < 3),
    );
    for (const [wood, killed] of [
      [2, false],
      [3, true],
      [5, true],
    ] as const) {
      const fate = first(withLoss(tender, wood, 'wood'), OLD).fate;
      expect(fate).toBe(killed ? 'killed' : 'living');
    }
    // Tender as in its third year, not as in its first.
    const mild = withLoss(withLoss(quiet(9), 6, 'kill', { oldestClass: 0 }), 5, 'wood');
    expect(first(mild, OLD).fate).toBe('living');
  });

  test('nights covered are those of the living tree, by its age', () => {
    const made = notComplete(withLoss(quiet(5), 3, 'kill'), 1);
    // Ten times the winter plus the age class.
    const nightsToCover = Int16Array.from({ length: 40 }, (_, i) => 10 * Math.floor(i / 8) + ((i >> 1) % 4));
    const only = livesOf(notComplete(made, 1, 2, 3, 4), { ...TREE, nightsToCover });
    expect(only).toMatchObject({ wintersCovered: 1, nightsCovered: 0, mostNightsCovered: 0 });
    // Planted before winters 0, 2, 3, 4 (1 isn't complete): 0 + 21 + 32, 20 + 30, 30, 40.
    const all = livesOf(made, { ...TREE, nightsToCover });
    expect(all).toMatchObject({ wintersCovered: 7, nightsCovered: 173, mostNightsCovered: 40 });
  });
});

describe('properties, for margins in no order at all', () => {
  test('courses agree with counts', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, (made, tree) => {
        const { lives, cropsDue, cropsPicked } = livesOf(made, tree);
        expect(lives.map(({ winter }) => winter)).toEqual(
          [...made.winter].filter((_, j) => made.complete[j] === 1),
        );
        for (const { course, years, fate, crops, start } of lives) {
          const killed = course.endsWith('k');
          expect(killed).toBe(fate !== 'living');
          expect(course.length).toBe(killed ? years + 1 : years);
          expect(course.slice(0, -1)).not.toContain('k');
          if (fate === 'living') expect(start + years).toBe(made.winter.length);
          else expect(made.complete[start + years] === 1).toBe(fate === 'killed');
          const picked = [...course].filter((letter) => letter === 'c' || letter === 'b').length;
          const perhaps = [...course].filter((letter) => 'lwk'.includes(letter)).length;
          expect(crops).toBeGreaterThanOrEqual(picked);
          expect(crops).toBeLessThanOrEqual(picked + perhaps);
          const young = course.slice(0, firstCropWinter(tree) - 1);
          expect(young).not.toMatch(/[cbfr]/);
          [...course].forEach((letter, a) => {
            if ('.cbr'.includes(letter)) expect(made.complete[start + a]).toBe(1);
            if (letter === '?') expect(made.complete[start + a]).toBe(0);
          });
        }
        expect(lives.reduce((sum, { crops }) => sum + crops, 0)).toBe(cropsPicked);
        const first = firstCropWinter(tree) - 1;
        const due = lives.flatMap(({ course, start }) =>
          [...course].filter((_, a) => a >= first && made.complete[start + a] === 1),
        );
        expect(cropsDue).toBe(due.length);
      }),
    );
  });

  test('margins raised anywhere: never a longer life, never more living, never another crop', () => {
    fc.assert(
      fc.property(
        anyMargins,
        anyTree,
        fc.constantFrom(0.02, 0.2, 1),
        fc.integer(),
        (made, tree, share, seed) => {
          const before = livesOf(made, tree).lives;
          livesOf(raised(made, share, seed), tree).lives.forEach((after, i) => {
            expect(after.years).toBeLessThanOrEqual(before[i]!.years);
            expect(after.crops).toBeLessThanOrEqual(before[i]!.crops);
            expect(after.cropsInTenWithBloom).toBeLessThanOrEqual(before[i]!.cropsInTenWithBloom);
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  test('the quick walk ends every life where the told one does', () => {
    fc.assert(
      fc.property(anyMargins, anyTree, (made, tree) => {
        const count = made.winter.length;
        const harm = {
          ...emptyHarm(count),
          kill: lossBits(made, tree.reading, 'kill'),
          wood: lossBits(made, tree.reading, 'wood'),
        };
        linkHarm(harm);
        const years = treeYears(tree, count);
        for (const { start, years: lived, fate } of livesOf(made, tree).lives) {
          expect(killAge(harm, years, start, count - start)).toBe(fate === 'living' ? 0 : lived + 1);
        }
      }),
      { numRuns: 300 },
    );
  });
});
