import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlantingLife } from '../../../../analysis/answer/life.ts';
import { PLANTING_MARKS } from '../../../../web/charts/planting-marks.ts';
import {
  autumnOf,
  cellSentence,
  courseWords,
  killingSentence,
  killingWinters,
  LETTER_WORDS,
  listed,
  namedWinters,
  ordinal,
  storyOf,
  winterAfter,
} from '../../../../web/views/life/course.ts';

const tree = (winter: number, course: string, more: Partial<PlantingLife> = {}): PlantingLife => {
  const killed = course.endsWith('k');
  return {
    winter,
    course,
    fate: killed ? 'killed' : 'living',
    years: killed ? course.length - 1 : course.length,
    crops: [...course].filter((letter) => letter === 'c' || letter === 'b').length,
    ...more,
  };
};

describe('a winter of a planting', () => {
  it('is told with the autumn of planting, its number and its name', () => {
    expect(cellSentence(tree(1983, '..k'), 2, 'north')).toBe(
      'Planted autumn 1982, third winter 1984–85: killed to the graft.',
    );
    expect(cellSentence(tree(1983, '..k'), 0, 'north')).toBe(
      'Planted autumn 1982, first winter 1982–83: living, too young to bear.',
    );
  });

  it('south of the equator falls in the year of its autumn', () => {
    expect(cellSentence(tree(1983, '.f'), 1, 'south')).toBe(
      'Planted autumn 1983, second winter 1984: its crop lost.',
    );
    for (const hemisphere of ['north', 'south'] as const)
      expect(winterAfter(autumnOf(1990, hemisphere), hemisphere)).toBe(1990);
  });

  it('does not claim a death in a winter that is not complete', () => {
    const sentence = cellSentence(tree(1983, '..k', { fate: 'unknown' }), 2, 'north');
    expect(sentence).toContain('cold enough to kill it');
    expect(sentence).toContain('isn’t complete');
  });

  it('has words and a mark for every letter, each its own', () => {
    const letters = '.cbflwkr?';
    expect(Object.keys(LETTER_WORDS).sort()).toEqual([...letters].sort());
    expect(PLANTING_MARKS.map(({ letter }) => letter).sort()).toEqual([...letters].sort());
    const shapes = PLANTING_MARKS.map(({ path }) => path(14, 13));
    expect(new Set(shapes).size).toBe(letters.length);
    const losses = PLANTING_MARKS.flatMap(({ tone }) => (typeof tone === 'number' ? [tone] : []));
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
    expect(losses.at(-1)).toBe(6);
  });
});

describe('the course in words', () => {
  it('counts quiet winters and names the winter of each loss', () => {
    expect(courseWords(tree(1966, '..ccclrcwrr?ffk'), 'north')).toBe(
      '2 too young to bear, 3 picked, leaves lost 1970–71, 1 growing again, 1 picked, limbs lost 1973–74, ' +
        '2 growing again, 1 not complete, crop lost 1977–78, crop lost 1978–79, killed 1979–80',
    );
  });

  it('accounts for every winter', () => {
    const courses = fc
      .array(fc.constantFrom(...'.cbflwr?'), { minLength: 1, maxLength: 40 })
      .map((l) => l.join(''));
    fc.assert(
      fc.property(courses, (course) => {
        const parts = courseWords(tree(1950, course), 'north').split(', ');
        const winters = parts.map((part) => Number(/^(\d+) [a-z]/.exec(part)?.[1] ?? 1));
        expect(winters.reduce((sum, count) => sum + count, 0)).toBe(course.length);
      }),
    );
  });
});

describe('the story of one tree', () => {
  it('tells what it gave, what it lost and how it ended', () => {
    expect(storyOf(tree(1966, '..cccfclrcwrrrk'), 'north')).toBe(
      'Planted in the autumn of 1965, the tree gave 5 crops in 15 winters. It lost its crop in 1970–71, leaves and twigs ' +
        'in 1972–73, and major limbs in 1975–76. The winter of 1979–80, its 15th, killed it to the graft.',
    );
  });

  it('of a tree without loss says only that it lived', () => {
    expect(storyOf(tree(2001, '..'), 'south')).toBe(
      'Planted in the autumn of 2001, the tree gave no crop in 2 winters. It was living at the end of the record, after 2 winters.',
    );
  });

  it('does not list more winters than one reads', () => {
    const story = storyOf(tree(1966, `..${'f'.repeat(9)}`), 'north');
    expect(story).toContain('its crop in 9 winters between 1967–68 and 1975–76');
  });

  it('leaves a fate open that is not known', () => {
    expect(storyOf(tree(1966, '.ck', { fate: 'unknown' }), 'north')).toContain('is not known');
  });
});

describe('winters that killed', () => {
  const plantings = [
    tree(1960, '..cck'),
    tree(1961, '..ck'),
    tree(1963, '.k'),
    tree(1964, 'l.cc'),
    tree(1962, '.k'),
  ];

  it('count the trees then standing, killed ones included', () => {
    expect(killingWinters(plantings)).toEqual([
      { winter: 1963, killed: 1, standing: 4 },
      { winter: 1964, killed: 3, standing: 4 },
    ]);
  });

  it('leave out a tree whose fate is not known', () => {
    expect(killingWinters([tree(1960, '.k', { fate: 'unknown' })])).toEqual([]);
    expect(killingSentence([], 'north')).toBe('No tree is known to have died.');
  });

  it('are told worst first', () => {
    expect(killingSentence(killingWinters(plantings), 'north')).toBe(
      '2 winters killed trees: 1963–64 (3 of 4 then standing) and 1962–63 (1 of 4 then standing).',
    );
  });

  it('are named above the grid where there is room', () => {
    expect(namedWinters(killingWinters(plantings), 'north', { gap: 1 }).map(({ winter }) => winter)).toEqual([
      1964, 1963,
    ]);
    expect(namedWinters(killingWinters(plantings), 'north', { gap: 3 })).toEqual([
      { winter: 1964, words: '1963–64 killed 3' },
    ]);
  });
});

describe('small words', () => {
  it('number winters', () => {
    expect([1, 3, 10, 11, 12, 13, 21, 22, 33, 40, 111].map(ordinal)).toEqual(
      'first third tenth 11th 12th 13th 21st 22nd 33rd 40th 111th'.split(' '),
    );
  });

  it('list parts', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'], ', and')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b, and c',
    ]);
  });
});
