import fc from 'fast-check';
import type { Building, PlanPoint, Yard, YardThing } from '../../../analysis/spot/yard.ts';

/** A flat, bare plot of 30 x 30 m, cold winds from the north. */
export const BARE_YARD: Yard = {
  name: 'Invented plot',
  widthM: 30,
  depthM: 30,
  things: [],
  spots: [],
  slope: null,
  bigWater: null,
  coldWindFromDeg: 0,
  own: {},
};

export function yardWith(things: readonly YardThing[], rest: Partial<Yard> = {}): Yard {
  return { ...BARE_YARD, ...rest, things };
}

/** Corners of an upright rectangle, anticlockwise from the south-west. */
export function rectangle(west: number, south: number, east: number, north: number): PlanPoint[] {
  return [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ];
}

/** Heated masonry house, 5 m high, 20 x 6 m; its south wall stands on north = 15. */
export const HOUSE: Building = {
  id: 'house',
  kind: 'building',
  outline: rectangle(5, 15, 25, 21),
  heightM: 5,
  heated: true,
  masonry: true,
};

/** A yard of 40 x 30 m with all that a yard can have. */
export const FULL_YARD: Yard = {
  ...yardWith([
    { ...HOUSE, outline: [[12, 14], [24, 14], [24, 18], [20, 18], [20, 24], [12, 24]] }, // prettier-ignore
    {
      id: 'shed',
      kind: 'building',
      outline: rectangle(30, 20, 36, 26),
      heightM: 3,
      heated: false,
      masonry: false,
    },
    { id: 'back', kind: 'wall', line: [[0, 29.5], [40, 29.5]], heightM: 1.8, masonry: true, open: false }, // prettier-ignore
    { id: 'fence', kind: 'wall', line: [[0.5, 0], [0.5, 29]], heightM: 1.8, masonry: false, open: true }, // prettier-ignore
    { id: 'row', kind: 'windbreak', line: [[39, 2], [39, 18]], heightM: 4 }, // prettier-ignore
    { id: 'oak', kind: 'canopy', outline: rectangle(4, 4, 9, 9), baseM: 2.5, heightM: 8, density: 0.8 },
    { id: 'pine', kind: 'canopy', outline: rectangle(28, 5, 33, 11), baseM: 2.5, heightM: 8, density: 0.8 },
    { id: 'court', kind: 'paving', outline: rectangle(12, 10, 24, 14) },
    { id: 'pond', kind: 'water', outline: rectangle(14, 3, 18, 6) },
    { id: 'bed', kind: 'ground', outline: rectangle(32, 12, 38, 17), cover: 'mulch' },
    { id: 'dip', kind: 'hollow', at: [20, 3], byM: 1, radiusM: 8 },
  ]),
  widthM: 40,
  depthM: 30,
  slope: { towardsDeg: 170, percent: 3, position: 'middle' },
};

/** Odd decimals, so that no bearing looked along meets a corner: there what is seen jumps. */
const between = (min: number, max: number, odd: number) =>
  fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) - 1 }).map((n) => n / 100 + odd);

const at = between(0, 30, 0.00317);
const point = fc.tuple(between(0, 30, 0.00471), between(0, 30, 0.00593));
const size = between(1, 12, 0.00129);
const box = fc.tuple(at, at, size, size).map(([e, n, w, d]) => rectangle(e, n, e + w, n + d));
const line = fc
  .tuple(at, at, between(1, 12, 0.00233), between(0, 6.28, 0.00233))
  .map(([e, n, long, turn]): PlanPoint[] => [
    [e, n],
    [e + long * Math.sin(turn), n + long * Math.cos(turn)],
  ]);
const heightM = between(0.3, 12, 0.00233);

/** Anything that may be drawn, of any size and anywhere about the plot. */
export function anyThing(masonry = fc.boolean()): fc.Arbitrary<YardThing> {
  const kind = <T extends string>(name: T) => ({ id: fc.constant(`${name}`), kind: fc.constant(name) });
  return fc.oneof(
    fc.record({ ...kind('building'), outline: box, heightM, heated: fc.boolean(), masonry }),
    fc.record({ ...kind('wall'), line, heightM, masonry, open: fc.boolean() }),
    fc.record({
      ...kind('canopy'),
      outline: box,
      baseM: between(0, 4, 0.00233),
      heightM: between(4.1, 15, 0.00233),
      density: between(0, 1, 0.00233),
    }),
    fc.record({ ...kind('paving'), outline: box }),
    fc.record({ ...kind('water'), outline: box }),
    fc.record({ ...kind('ground'), outline: box, cover: fc.constantFrom('bare', 'mulch', 'tall-grass') }),
    fc.record({ ...kind('windbreak'), line, heightM }),
    fc.record({
      id: fc.constant('relief'),
      kind: fc.constantFrom('hollow', 'rise'),
      at: point,
      byM: between(0.1, 15, 0.00233),
      radiusM: between(1, 20, 0.00233),
    }),
  ) as fc.Arbitrary<YardThing>;
}

const bearing = between(0, 360, 0.00377);

/** Any yard of up to six things, with or without slope and big water. */
export function anyYard(masonry = fc.boolean()): fc.Arbitrary<Yard> {
  return fc
    .record({
      things: fc.array(anyThing(masonry), { maxLength: 6 }),
      coldWindFromDeg: bearing,
      slope: fc.option(
        fc.record({
          towardsDeg: bearing,
          percent: fc.double({ min: 0, max: 40, noNaN: true }),
          position: fc.constantFrom('foot', 'middle', 'crest'),
        }),
      ),
      bigWater: fc.option(
        fc.record({
          bearingDeg: bearing,
          distanceM: fc.double({ min: 0, max: 20_000, noNaN: true }),
          kind: fc.constantFrom('lake', 'sea'),
        }),
      ),
    })
    .map((drawn) => ({ ...BARE_YARD, ...drawn }) as Yard);
}

export const anyPoint: fc.Arbitrary<PlanPoint> = point;
