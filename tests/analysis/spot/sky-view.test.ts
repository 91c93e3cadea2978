import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { prepareObstacles } from '../../../analysis/spot/obstacles.ts';
import { skyHiddenAt } from '../../../analysis/spot/sky-view.ts';
import { readYardFile } from '../../../analysis/spot/yard-file.ts';
import type {
  Building,
  Canopy,
  PlanPoint,
  Wall,
  Windbreak,
  Yard,
  YardThing,
} from '../../../analysis/spot/yard.ts';
import rays from '../../reference/spot/sky-hidden.json' with { type: 'json' };
import { anyYard } from './any-yard.ts';

/** Half a wall that stands for one without end. */
const FAR_M = 1e6;
const RADIANS = Math.PI / 180;

function wall(heightM: number, ...line: PlanPoint[]): Wall {
  return { kind: 'wall', id: 'wall', line, heightM, masonry: true, open: false };
}

function endless(northM: number, heightM: number): Wall {
  return wall(heightM, [-FAR_M, northM], [FAR_M, northM]);
}

function crown(outline: readonly PlanPoint[], baseM: number, heightM: number, density: number): Canopy {
  return { kind: 'canopy', id: 'crown', outline, baseM, heightM, density };
}

function ring(radiusM: number, corners = 360): PlanPoint[] {
  const turns = Array.from({ length: corners }, (_, at) => (at * 2 * Math.PI) / corners);
  return turns.map((turn): PlanPoint => [radiusM * Math.cos(turn), radiusM * Math.sin(turn)]);
}

/** Share of the sky hidden at one point, in a yard prepared for it alone. */
function skyHidden(yard: Pick<Yard, 'things'>, [eastM, northM]: PlanPoint, heightM?: number): number {
  return skyHiddenAt(prepareObstacles(yard), eastM, northM, heightM);
}

function viewFactor(...things: YardThing[]): number {
  return 1 - skyHidden({ things }, [0, 0], 0);
}

describe('sky-view factors in closed form (Oke 1987, Boundary Layer Climates)', () => {
  test.each([5, 20, 45, 60, 80])('endless wall, its top at %i degrees', (degrees) => {
    const topM = 7 * Math.tan(degrees * RADIANS);
    expect(viewFactor(endless(7, topM))).toBeCloseTo((1 + Math.cos(degrees * RADIANS)) / 2, 5);
    // The eye at 1 m sees a wall that is 1 m higher alike.
    expect(skyHidden({ things: [endless(7, topM + 1)] }, [0, 0])).toBeCloseTo(
      1 - viewFactor(endless(7, topM)),
      10,
    );
  });

  test.each([
    [3, 10],
    [10, 10],
    [30, 10],
  ])('street canyon %i m high and %i m wide, from the middle of its floor', (heightM, widthM) => {
    const canyon = [endless(widthM / 2, heightM), endless(-widthM / 2, heightM)];
    expect(viewFactor(...canyon)).toBeCloseTo(Math.cos(Math.atan(heightM / (0.5 * widthM))), 5);
  });

  test('street with unlike sides, off its middle', () => {
    const half = (heightM: number, distanceM: number) => Math.cos(Math.atan(heightM / distanceM)) / 2;
    expect(viewFactor(endless(3, 8), endless(-5, 4))).toBeCloseTo(half(8, 3) + half(4, 5), 5);
  });

  test.each([10, 45, 70])('round court, its rim at %i degrees', (degrees) => {
    const court = ring(12);
    const heightM = 12 * Math.tan(degrees * RADIANS);
    expect(viewFactor(wall(heightM, ...court, court[0]!))).toBeCloseTo(Math.cos(degrees * RADIANS) ** 2, 4);
  });
});

describe('view factors in closed form (catalogues of thermal radiation, from memory)', () => {
  test('a round crown overhead hides R²/(R²+z²) times its density', () => {
    const outline = ring(4, 36);
    expect(1 - viewFactor(crown(outline, 3, 9, 0.7))).toBeCloseTo(0.7 * (16 / 25), 2);
  });

  test('the corner of a roof overhead', () => {
    const [wide, long, highM] = [5, 3, 2.5];
    const roof = crown(
      [
        [0, 0],
        [wide, 0],
        [wide, long],
        [0, long],
      ],
      highM,
      highM + 1e-6,
      1,
    );
    const [a, b] = [wide / highM, long / highM];
    const [ra, rb] = [Math.hypot(1, a), Math.hypot(1, b)];
    const factor = ((a / ra) * Math.atan(b / ra) + (b / rb) * Math.atan(a / rb)) / (2 * Math.PI);
    // The eye a hair within the corner.
    const seen = skyHidden({ things: [roof] }, [1e-6, 1e-6], 0);
    expect(Math.abs(seen - factor)).toBeLessThan(0.002);
  });

  test('a wall that begins straight before the eye', () => {
    const [longM, highM, distanceM] = [6, 3, 2];
    const far = Math.hypot(highM, distanceM);
    const factor =
      (Math.atan(longM / distanceM) - (distanceM / far) * Math.atan(longM / far)) / (2 * Math.PI);
    const seen = skyHidden({ things: [wall(highM, [0, distanceM], [longM, distanceM])] }, [0, 0], 0);
    expect(Math.abs(seen - factor)).toBeLessThan(0.003);
  });
});

test('houses, walls, windbreaks and crowns before one another, against rays (tests/reference/spot/sky_hidden.py)', () => {
  const yards = rays.yards.map((yard) => readYardFile(JSON.stringify(yard), 'reference'));
  let squares = 0;
  for (const { yard, at, heightM, hidden } of rays.rows) {
    const difference = skyHidden(yards[yard]!, [at[0]!, at[1]!], heightM) - hidden;
    expect(Math.abs(difference)).toBeLessThan(0.005);
    squares += difference ** 2;
  }
  expect(rays.rows.length).toBe(81);
  expect(Math.sqrt(squares / rays.rows.length)).toBeLessThan(0.0015);
});

describe('edges', () => {
  const house: Building = {
    ...{ kind: 'building', id: 'house', heightM: 3, heated: true, masonry: true },
    outline: [
      [2, 2],
      [6, 2],
      [6, 6],
      [2, 6],
    ],
  };

  test('in a building nothing is seen, above its roof all', () => {
    expect(skyHidden({ things: [house] }, [4, 4])).toBe(1);
    expect(skyHidden({ things: [{ ...house, outline: [...house.outline].reverse() }] }, [4, 4])).toBe(1);
    expect(skyHidden({ things: [house] }, [4, 4], 3)).toBe(0);
  });

  test('at the foot of a wall and in its very line half is hidden', () => {
    for (const northM of [-1e-4, 0, 1e-4]) {
      const hidden = skyHidden({ things: [wall(2, [-100, 0], [100, 0])] }, [0, northM], 0);
      expect(hidden).toBeCloseTo(0.5, 3);
    }
  });

  test('on a corner, and where two corners lie on one another, it stays a share', () => {
    const things = [house, wall(2, [6, 6], [6, 6], [9, 6]), crown(house.outline, 1, 5, 0.5)];
    for (const at of [
      [2, 2],
      [6, 6],
      [4, 2],
      [9, 6],
    ] as const) {
      const hidden = skyHidden({ things }, at);
      expect(hidden).toBeGreaterThan(0.2);
      expect(hidden).toBeLessThanOrEqual(1);
    }
  });

  test('nothing, or nothing above the eye, hides nothing', () => {
    expect(skyHidden({ things: [] }, [1, 1])).toBe(0);
    const low = wall(0.9, [0, 2], [9, 2]);
    expect(skyHidden({ things: [low, { kind: 'paving', id: 'p', outline: house.outline }] }, [1, 1])).toBe(0);
  });

  test('a hooked crown closes the sky once along a line that passes it twice, two crowns twice', () => {
    const near: PlanPoint[] = [
      [-50, 2],
      [50, 2],
      [50, 3],
      [-50, 3],
    ];
    const both: PlanPoint[] = [
      [-50, 2],
      [50, 2],
      [50, 6],
      [-50, 6],
      [-50, 5],
      [49, 5],
      [49, 3],
      [-50, 3],
    ];
    const one = skyHidden({ things: [crown(near, 0.2, 4, 0.5)] }, [0, 0]);
    const hook = skyHidden({ things: [crown(both, 0.2, 4, 0.5)] }, [0, 0]);
    const twice = skyHidden({ things: [crown(near, 0.2, 4, 0.5), crown(near, 0.2, 4, 0.5)] }, [0, 0]);
    expect(hook).toBeCloseTo(one, 2);
    expect(twice).toBeCloseTo(1.5 * one, 10);
  });
});

describe('whatever stands in the yard', () => {
  // Off every round number, where corners would lie in the line of an azimuth or on the eye itself.
  const metres = fc.nat(139).map((tenths) => 0.0137 + tenths / 10);
  const eye = fc.tuple(metres, metres);

  function raised(thing: YardThing, byM: number): YardThing {
    return 'heightM' in thing ? { ...thing, heightM: thing.heightM + byM } : thing;
  }

  test('a share, the same from a prepared yard, and never less for higher things or one thing more', () => {
    fc.assert(
      fc.property(anyYard, eye, fc.double({ min: 0, max: 5, noNaN: true }), (yard, at, byM) => {
        const hidden = skyHidden(yard, at);
        expect(hidden).toBeGreaterThanOrEqual(0);
        expect(hidden).toBeLessThanOrEqual(1 + 1e-12);
        expect(skyHidden({ things: yard.things.map((thing) => raised(thing, byM)) }, at)).toBeGreaterThan(
          hidden - 1e-9,
        );
        expect(skyHidden({ things: yard.things.slice(1) }, at)).toBeLessThan(hidden + 1e-9);
        const prepared = prepareObstacles(yard);
        skyHiddenAt(prepared, 1, 1);
        expect(skyHiddenAt(prepared, at[0], at[1])).toBe(hidden);
      }),
      { numRuns: 200 },
    );
  });

  test('turned by a right angle, or with corners listed the other way round, it hides as much', () => {
    const turned = ([east, north]: PlanPoint): PlanPoint => [-north, east];
    const change = (thing: YardThing, by: (points: readonly PlanPoint[]) => PlanPoint[]): YardThing => {
      if ('outline' in thing) return { ...thing, outline: by(thing.outline) };
      return 'line' in thing ? { ...thing, line: by(thing.line) } : thing;
    };
    fc.assert(
      fc.property(anyYard, eye, (yard: Yard, at) => {
        const hidden = skyHidden(yard, at);
        const around = yard.things.map((thing) => change(thing, (points) => points.map(turned)));
        expect(skyHidden({ things: around }, turned(at))).toBeCloseTo(hidden, 6);
        const back = yard.things.map((thing) => change(thing, (points) => [...points].reverse()));
        expect(skyHidden({ things: back }, at)).toBeCloseTo(hidden, 6);
      }),
    );
  });

  test('nearer to a wall, house or windbreak never more sky', () => {
    const thing = fc.constantFrom<'wall' | 'windbreak' | 'building'>('wall', 'windbreak', 'building');
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        thing,
        between(2, 40),
        between(1.2, 20),
        between(0, 60),
        between(0.1, 20),
        (kind, longM, heightM, awayM, stepM) => {
          const half = longM / 2;
          const line: PlanPoint[] = [
            [-half, 0],
            [half, 0],
          ];
          const shape: Building | Wall | Windbreak =
            kind === 'building'
              ? {
                  kind,
                  id: 'b',
                  outline: [...line, [half, 6], [-half, 6]],
                  heightM,
                  heated: false,
                  masonry: true,
                }
              : kind === 'wall'
                ? wall(heightM, ...line)
                : { kind, id: 'w', line, heightM };
          const near = skyHidden({ things: [shape] }, [0, -0.05 - awayM]);
          const far = skyHidden({ things: [shape] }, [0, -0.05 - awayM - stepM]);
          // Whether a narrow end falls to one azimuth more or less.
          expect(near).toBeGreaterThan(far - 0.005);
        },
      ),
    );
  });
});
