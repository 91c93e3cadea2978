import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MECHANISM_IDS } from '../../../analysis/spot/mechanism.ts';
import { offsetAt, prepareYard } from '../../../analysis/spot/offset-at.ts';
import type { PlanPoint, Yard, YardThing } from '../../../analysis/spot/yard.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';
import { anyPoint, anyYard, BARE_YARD, rectangle, yardWith } from './drawn-yard.ts';

const side = fc.constantFrom(31, -31);
const gainAt = (yard: Yard, latDeg: number, at: PlanPoint) => offsetAt(prepareYard(yard, latDeg), at).gain;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The yard with every point moved and every bearing turned. */
function moved(yard: Yard, move: (at: PlanPoint) => PlanPoint, turn: (bearingDeg: number) => number): Yard {
  const things = yard.things.map((thing): YardThing => {
    if ('outline' in thing) return { ...thing, outline: thing.outline.map(move) };
    if ('line' in thing) return { ...thing, line: thing.line.map(move) };
    return { ...thing, at: move(thing.at) };
  });
  const { slope, bigWater } = yard;
  return {
    ...yard,
    things,
    coldWindFromDeg: turn(yard.coldWindFromDeg),
    slope: slope && { ...slope, towardsDeg: turn(slope.towardsDeg) },
    bigWater: bigWater && { ...bigWater, bearingDeg: turn(bigWater.bearingDeg) },
  };
}

describe('monotone', () => {
  it('nearer a sun-facing wall is never colder on a calm night', () => {
    const scene = fc.record({
      latDeg: side,
      heightM: number(0.3, 12),
      heated: fc.boolean(),
      masonry: fc.boolean(),
      widthM: number(2, 28),
      aside: number(0, 1),
      coldWindFromDeg: number(0, 360),
      distances: fc.tuple(number(0.01, 14), number(0.01, 14)),
      free: fc.boolean(),
    });
    fc.assert(
      fc.property(
        scene,
        ({ latDeg, heightM, heated, masonry, widthM, aside, coldWindFromDeg, distances, free }) => {
          const north = latDeg > 0;
          const [south, end] = north ? [15, 20] : [10, 15];
          const line = rectangle(1, 15, 1 + widthM, 15).slice(0, 2);
          const thing: YardThing = free
            ? { id: 'w', kind: 'wall', line, heightM, masonry, open: false }
            : {
                id: 'b',
                kind: 'building',
                outline: rectangle(1, south, 1 + widthM, end),
                heightM,
                heated,
                masonry,
              };
          const yard = yardWith([thing], { coldWindFromDeg });
          const calmAt = (distanceM: number) =>
            gainAt(yard, latDeg, [1 + aside * widthM, north ? 15 - distanceM : 15 + distanceM]).calm.centreC;
          const [near, far] = distances.sort((a, b) => a - b).map(calmAt);
          expect(near).toBeGreaterThanOrEqual(far - 1e-9);
          expect(far).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('deeper in a hollow is never warmer, whatever else is drawn', () => {
    fc.assert(
      fc.property(anyYard(), anyPoint, side, number(0.1, 8), number(0, 8), (yard, at, latDeg, byM, moreM) => {
        const withHollow = (depthM: number): Yard => ({
          ...yard,
          things: [...yard.things, { id: 'dip', kind: 'hollow', at, byM: depthM, radiusM: 9 }],
        });
        const shallow = gainAt(withHollow(byM), latDeg, at);
        const deep = gainAt(withHollow(byM + moreM), latDeg, at);
        expect(deep.calm.centreC).toBeLessThanOrEqual(shallow.calm.centreC + 1e-9);
        expect(deep.windy.centreC).toBeLessThanOrEqual(shallow.windy.centreC + 1e-9);
      }),
    );
    fc.assert(
      fc.property(number(0.1, 12), number(1, 15), number(0, 15), number(0, 15), (byM, radiusM, a, b) => {
        const yard = yardWith([{ id: 'dip', kind: 'hollow', at: [15, 15], byM, radiusM }]);
        const [inner, outer] = [a, b].sort((x, y) => x - y);
        const calmAt = (out: number) => gainAt(yard, 31, [15 + out, 15]).calm.centreC;
        expect(calmAt(inner)).toBeLessThanOrEqual(calmAt(outer) + 1e-12);
      }),
    );
  });
});

describe('symmetry', () => {
  it('a yard south of the equator mirrors one north of it', () => {
    fc.assert(
      fc.property(anyYard(), anyPoint, (yard, at) => {
        const flip = ([east, north]: PlanPoint): PlanPoint => [east, 30 - north];
        const there = moved(yard, flip, (bearing) => 180 - bearing);
        const a = gainAt(yard, 31, at);
        const b = gainAt(there, -31, flip(at));
        expect(b.calm.centreC).toBeCloseTo(a.calm.centreC, 6);
        expect(b.windy.centreC).toBeCloseTo(a.windy.centreC, 6);
        expect(b.calm.lowC).toBeCloseTo(a.calm.lowC, 6);
      }),
    );
  });

  it('a quarter turn of everything, wind and all, changes nothing where no masonry looks at the sun', () => {
    fc.assert(
      fc.property(anyYard(fc.constant(false)), anyPoint, side, (yard, at, latDeg) => {
        const turn = ([east, north]: PlanPoint): PlanPoint => [north, 30 - east];
        const a = gainAt(yard, latDeg, at);
        const b = gainAt(
          moved(yard, turn, (bearing) => bearing + 90),
          latDeg,
          turn(at),
        );
        expect(b.calm.centreC).toBeCloseTo(a.calm.centreC, 6);
        expect(b.windy.centreC).toBeCloseTo(a.windy.centreC, 6);
        expect(b.windy.highC).toBeCloseTo(a.windy.highC, 6);
      }),
    );
  });
});

describe('limits', () => {
  it('keeps every end within cap and floor and in order, also with own degrees', () => {
    const degrees = fc.record({ calmC: number(-6, 6), windyC: number(-6, 6) });
    const ids = [...MECHANISM_IDS];
    const own = fc.dictionary(fc.constantFrom(...ids), degrees);
    fc.assert(
      fc.property(anyYard(), own, anyPoint, side, (yard, ownDegrees, at, latDeg) => {
        const { calm, windy } = gainAt({ ...yard, own: ownDegrees }, latDeg, at);
        for (const [{ lowC, centreC, highC }, floorF, capF] of [
          [calm, -8, 8],
          [windy, -2, 3],
        ] as const) {
          expect(celsiusDifferenceToFahrenheit(lowC)).toBeGreaterThanOrEqual(floorF - 1e-9);
          expect(celsiusDifferenceToFahrenheit(highC)).toBeLessThanOrEqual(capF + 1e-9);
          expect(lowC).toBeLessThanOrEqual(centreC);
          expect(centreC).toBeLessThanOrEqual(highC);
        }
      }),
    );
  });

  it('no warmth is more on windy than on calm nights, but that of shelter and big water', () => {
    // What stands upright counts once: on windy nights the sky that a wall hides may count in place of its warmth.
    const upright = new Set(['warm-wall', 'heated-wall', 'sky-hidden']);
    fc.assert(
      fc.property(anyYard(), anyPoint, side, (yard, at, latDeg) => {
        let calmC = 0;
        let windyC = 0;
        for (const { id, gain } of offsetAt(prepareYard(yard, latDeg), at).mechanisms) {
          if (upright.has(id)) {
            calmC += gain.calm.centreC;
            windyC += gain.windy.centreC;
          } else if (id !== 'wind-shelter' && id !== 'big-water' && gain.windy.centreC > 0) {
            expect(gain.windy.centreC, id).toBeLessThanOrEqual(gain.calm.centreC);
          }
        }
        // Parts below 0.03 °C aren't listed.
        expect(windyC).toBeLessThanOrEqual(calmC + 0.06);
      }),
    );
  });

  it('leaves a bare yard without wind, slope and water at nothing everywhere', () => {
    fc.assert(
      fc.property(anyPoint, side, (at, latDeg) => {
        expect(gainAt(BARE_YARD, latDeg, at).calm.centreC).toBe(0);
        expect(gainAt(BARE_YARD, latDeg, at).windy.centreC).toBe(0);
      }),
    );
  });
});
