import fc from 'fast-check';

import { MECHANISM_IDS } from '../../../analysis/spot/mechanism.ts';
import type { PlanPoint, Yard, YardSpot, YardThing } from '../../../analysis/spot/yard.ts';

/** Yards of every kind within the limits, for properties. */
const WIDTH_M = { min: 14, max: 200 };

function within(min: number, max: number) {
  // Adding 0 turns -0 into 0, which JSON can't tell apart.
  return fc.double({ min, max, noNaN: true }).map((value) => value + 0);
}

/** Corners about a middle, in order of bearing: never crossing themselves. */
function starAbout(middle: PlanPoint) {
  return fc.array(within(1, 5), { minLength: 3, maxLength: 12 }).map((radii) =>
    radii.map((radiusM, at): PlanPoint => {
      const turn = (at * 2 * Math.PI) / radii.length;
      return [middle[0] + radiusM * Math.sin(turn), middle[1] + radiusM * Math.cos(turn)];
    }),
  );
}

function thingIn(widthM: number, depthM: number, id: string): fc.Arbitrary<YardThing> {
  const at = fc.tuple(within(0, widthM), within(0, depthM));
  const middle = fc.tuple(within(5, widthM - 5), within(5, depthM - 5));
  const outline = middle.chain(starAbout);
  const line = fc
    .array(at, { minLength: 2, maxLength: 8 })
    .filter(([first, second]) => Math.hypot(first![0] - second![0], first![1] - second![1]) > 0.2);
  const heightM = within(0.1, 40);
  const flag = fc.boolean();
  const byM = heightM;
  const relief = { at, byM, radiusM: within(0.1, 200), id: fc.constant(id) };
  const named = { id: fc.constant(id), outline };
  return fc.oneof(
    fc.record({ kind: fc.constant('building'), ...named, heightM, heated: flag, masonry: flag }),
    fc.record({ kind: fc.constant('wall'), id: fc.constant(id), line, heightM, masonry: flag, open: flag }),
    fc
      .record({
        kind: fc.constant('canopy'),
        ...named,
        baseM: within(0, 39),
        riseM: within(0.1, 1),
        density: within(0, 1),
      })
      .map(({ riseM, ...crown }) => ({ ...crown, heightM: crown.baseM + riseM })),
    fc.record({ kind: fc.constantFrom('paving', 'water'), ...named }),
    fc.record({
      kind: fc.constant('ground'),
      ...named,
      cover: fc.constantFrom('bare', 'mulch', 'tall-grass'),
    }),
    fc.record({ kind: fc.constant('windbreak'), id: fc.constant(id), line, heightM }),
    fc.record({ kind: fc.constantFrom('hollow', 'rise'), ...relief }),
  ) as fc.Arbitrary<YardThing>;
}

function spotsIn(widthM: number, depthM: number): fc.Arbitrary<YardSpot[]> {
  const spot = fc.tuple(
    fc.string({ minLength: 1, maxLength: 20, unit: 'binary' }).filter((name) => name.trim() !== ''),
    fc.tuple(within(0, widthM), within(0, depthM)),
  );
  return fc
    .uniqueArray(spot, { maxLength: 4, selector: ([name]) => name })
    .map((spots) => spots.map(([name, at], number) => ({ id: `spot-${number + 1}`, name, at })));
}

const bearing = within(0, 360);
const degrees = within(-10, 10);

/** A yard that can be reckoned with. */
export const anyYard: fc.Arbitrary<Yard> = fc
  .tuple(within(WIDTH_M.min, WIDTH_M.max), within(WIDTH_M.min, WIDTH_M.max), fc.nat(6))
  .chain(([widthM, depthM, count]) =>
    fc.record({
      name: fc.string({ maxLength: 30, unit: 'binary' }),
      widthM: fc.constant(widthM),
      depthM: fc.constant(depthM),
      things: fc.tuple(
        ...Array.from({ length: count }, (_, at) => thingIn(widthM, depthM, `thing-${at + 1}`)),
      ) as fc.Arbitrary<YardThing[]>,
      spots: spotsIn(widthM, depthM),
      slope: fc.option(
        fc.record({
          towardsDeg: bearing,
          percent: within(0, 100),
          position: fc.constantFrom('foot' as const, 'middle' as const, 'crest' as const),
        }),
      ),
      bigWater: fc.option(
        fc.record({
          bearingDeg: bearing,
          distanceM: within(0, 100_000),
          kind: fc.constantFrom('lake' as const, 'sea' as const),
        }),
      ),
      coldWindFromDeg: bearing,
      own: fc.dictionary(fc.constantFrom(...MECHANISM_IDS), fc.record({ calmC: degrees, windyC: degrees }), {
        maxKeys: 4,
        noNullPrototype: true,
      }),
    }),
  );
