import { describe, expect, test } from 'vitest';

import { InputError } from '../../../analysis/records/input-error.ts';
import { checkYard, yardProblems } from '../../../analysis/spot/check-yard.ts';
import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import type { Canopy, Relief, Wall, Yard, YardThing } from '../../../analysis/spot/yard.ts';

const LOT: Yard = { ...READY_YARDS[0]!.yard, things: [], spots: [] };
const WALL: Wall = {
  ...{ kind: 'wall', id: 'wall-2', heightM: 2, masonry: true, open: false },
  line: [
    [1, 1],
    [5, 1],
  ],
};
const CANOPY: Canopy = {
  ...{ kind: 'canopy', id: 'oak', baseM: 2, heightM: 6, density: 0.8 },
  outline: [
    [10, 10],
    [14, 10],
    [12, 14],
  ],
};
const HOLLOW: Relief = { kind: 'hollow', id: 'dip', at: [9, 9], byM: 1, radiusM: 5 };

function sentences(yard: Partial<Yard>): string[] {
  return yardProblems({ ...LOT, ...yard }).map(({ sentence }) => sentence);
}

function ofThing(thing: YardThing): string[] {
  return sentences({ things: [thing] });
}

test('a yard without faults has no problem', () => {
  expect(sentences({ things: [WALL, CANOPY, HOLLOW] })).toEqual([]);
  expect(() => checkYard({ ...LOT, things: [WALL] })).not.toThrow();
});

describe('things', () => {
  const bowTie: Canopy['outline'] = [
    [10, 10],
    [14, 14],
    [14, 10],
    [10, 14],
  ];
  test.each<[YardThing, string]>([
    [
      { ...CANOPY, outline: bowTie },
      'The canopy "oak" has an outline that crosses itself, at 12 m east and 12 m north.',
    ],
    [
      {
        ...WALL,
        line: [
          [3, 3],
          [3, 3],
        ],
      },
      'The wall 2 has a length of 0 m; at least 0.05 m is needed.',
    ],
    [{ ...WALL, line: [[3, 3]] }, 'The wall 2 has 1 corner; at least 2 are needed.'],
    [{ ...WALL, line: [] }, 'The wall 2 has 0 corners; at least 2 are needed.'],
    [{ ...CANOPY, outline: bowTie.slice(0, 2) }, 'The canopy "oak" has 2 corners; at least 3 are needed.'],
    [
      {
        ...CANOPY,
        outline: [
          [1, 1],
          [2, 2],
          [3, 3],
        ],
      },
      'The canopy "oak" has an area of 0 m²; at least 0.01 m² is needed.',
    ],
    [
      {
        ...WALL,
        line: [
          [3, 3],
          [33.5, 3],
        ],
      },
      'The wall 2 reaches outside the plot, to 33.5 m east and 3 m north; the plot is 32 by 24 m.',
    ],
    [
      {
        ...WALL,
        line: [
          [3, 3],
          [NaN, 3],
        ],
      },
      'The wall 2 has a corner that is not a number.',
    ],
    [{ ...WALL, line: Array(41).fill([1, 1]) }, 'The wall 2 has 41 corners; at most 40 are possible.'],
    [{ ...WALL, heightM: 0.05 }, 'The wall 2 has a height of 0.05 m; at least 0.1 m is needed.'],
    [{ ...WALL, heightM: 41 }, 'The wall 2 has a height of 41 m; at most 40 m is possible.'],
    [{ ...WALL, heightM: Infinity }, 'The wall 2 has a height that is not a number.'],
    [{ ...CANOPY, baseM: 6 }, 'The canopy "oak" has its underside at 6 m; it must be below its top at 6 m.'],
    [
      { ...CANOPY, baseM: -1 },
      'The canopy "oak" has a height of the underside of -1 m; at least 0 m is needed.',
    ],
    [{ ...CANOPY, density: 1.2 }, 'The canopy "oak" has a density of 1.2; at most 1 is possible.'],
    [{ ...HOLLOW, radiusM: 0 }, 'The hollow "dip" has a radius of 0 m; at least 0.1 m is needed.'],
    [{ ...HOLLOW, byM: -2 }, 'The hollow "dip" has a depth of -2 m; at least 0.1 m is needed.'],
    [
      { ...HOLLOW, kind: 'rise', byM: 50 },
      'The high point "dip" has a height of 50 m; at most 40 m is possible.',
    ],
    [
      { ...HOLLOW, at: [-1, 2] },
      'The hollow "dip" reaches outside the plot, to -1 m east and 2 m north; the plot is 32 by 24 m.',
    ],
    [{ ...WALL, id: 'a\nb' }, 'The wall "a\\nb" has an id that is not made of letters, figures and hyphens.'],
    [{ ...WALL, id: 'a b' }, 'The wall "a b" has an id that is not made of letters, figures and hyphens.'],
  ])('%#: $1', (thing, expected) => {
    expect(ofThing(thing)).toEqual([expected]);
  });

  test('each faulty thing is named once, with its id', () => {
    const bad = { ...CANOPY, density: NaN, heightM: 99 };
    expect(yardProblems({ ...LOT, things: [bad, WALL, WALL] })).toEqual([
      { thingId: 'oak', sentence: 'The canopy "oak" has a height of 99 m; at most 40 m is possible.' },
      { thingId: 'wall-2', sentence: 'The wall 2 has the id of another thing of the yard.' },
    ]);
  });

  test('a corner on the very edge of the plot lies in it', () => {
    expect(
      ofThing({
        ...WALL,
        line: [
          [0, 0],
          [32, 24],
        ],
      }),
    ).toEqual([]);
  });
});

describe('the plot', () => {
  test.each<[Partial<Yard>, string]>([
    [{ widthM: 10_000 }, 'The plot has a width of 10000 m; at most 200 m is possible.'],
    [{ depthM: 3 }, 'The plot has a depth of 3 m; at least 4 m is needed.'],
    [{ depthM: NaN }, 'The plot has a depth that is not a number.'],
    [{ coldWindFromDeg: 400 }, 'The cold wind has a bearing of 400°; at most 360° is possible.'],
    [
      { slope: { towardsDeg: 10, percent: 120, position: 'foot' } },
      'The slope has a fall of 120 m in 100 m; at most 100 m in 100 m is possible.',
    ],
    [
      { bigWater: { bearingDeg: 10, distanceM: -5, kind: 'lake' } },
      'The big water has a distance of -5 m; at least 0 m is needed.',
    ],
    [
      { own: { 'warm-wall': { calmC: 12, windyC: 0 } } },
      'Your own "warm-wall" has a gain on calm nights of 12 °C; at most 10 °C is possible.',
    ],
    [{ name: 'x'.repeat(61) }, "The yard's name has 61 letters; at most 60 are possible."],
    [
      { things: Array.from({ length: 61 }, (_, at) => ({ ...HOLLOW, id: `h-${at}` })) },
      'The yard holds 61 things; at most 60 are possible.',
    ],
    [{ spots: [{ id: 's', name: ' ', at: [1, 1] }] }, 'The spot "s" has no name.'],
    [
      { spots: [{ id: 's', name: 'Far', at: [1, 99] }] },
      'The spot "Far" reaches outside the plot, to 1 m east and 99 m north; the plot is 32 by 24 m.',
    ],
    [
      {
        spots: [
          { id: 's', name: 'Bed', at: [1, 1] },
          { id: 't', name: 'Bed', at: [2, 1] },
        ],
      },
      'The spot "Bed" has the name of another spot.',
    ],
  ])('%#: $1', (yard, expected) => {
    expect(sentences(yard)).toEqual([expected]);
    expect(() => checkYard({ ...LOT, ...yard })).toThrow(new InputError(expected));
  });
});
