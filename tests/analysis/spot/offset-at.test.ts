import { describe, expect, it } from 'vitest';
import { offsetAt, prepareYard } from '../../../analysis/spot/offset-at.ts';
import type { PlanPoint, Yard, YardThing } from '../../../analysis/spot/yard.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';
import { HOUSE, rectangle, yardWith } from './drawn-yard.ts';

const LAT = 31;

/** Low, centre and high in °F, calm and windy. */
function offsetF(yard: Yard, at: PlanPoint, latDeg = LAT) {
  const { gain } = offsetAt(prepareYard(yard, latDeg), at);
  const inF = ({ lowC, centreC, highC }: typeof gain.calm) =>
    [lowC, centreC, highC].map((c) => Number(celsiusDifferenceToFahrenheit(c).toFixed(6)));
  return { calm: inF(gain.calm), windy: inF(gain.windy) };
}
const idsAt = (yard: Yard, at: PlanPoint) =>
  offsetAt(prepareYard(yard, LAT), at).mechanisms.map(({ id }) => id);
const whyOf = (yard: Yard, at: PlanPoint, id: string) =>
  offsetAt(prepareYard(yard, LAT), at).mechanisms.find((mechanism) => mechanism.id === id)?.why;

const windbreak = (north: number, heightM: number): YardThing => ({
  id: 'hedge',
  kind: 'windbreak',
  line: [
    [-200, north],
    [200, north],
  ],
  heightM,
});
const wall = (rest: object): YardThing => ({
  id: 'wall',
  kind: 'wall',
  line: [
    [0, 20],
    [30, 20],
  ],
  heightM: 2.4,
  masonry: true,
  open: false,
  ...rest,
});

describe("the handbook's rows, drawn (microsites, section 1)", () => {
  it('open lawn, flat: 0', () => {
    expect(offsetF(yardWith([]), [15, 15])).toEqual({ calm: [0, 0, 0], windy: [0, 0, 0] });
    expect(idsAt(yardWith([]), [15, 15])).toEqual([]);
  });

  it('within 1 to 2 m of south or west masonry wall of heated house: +3 to +6, +1 to +2', () => {
    // Cold wind along the wall's outside, so that nothing shelters.
    const south = yardWith([HOUSE], { coldWindFromDeg: 180 });
    const west = yardWith([HOUSE], { coldWindFromDeg: 270 });
    for (const offset of [offsetF(south, [15, 13.5]), offsetF(west, [3.5, 18])]) {
      expect(offset).toEqual({ calm: [3, 4.5, 6], windy: [1, 1.5, 2] });
    }
    expect(idsAt(south, [15, 13.5])).toEqual(['heated-wall', 'warm-wall']);
    expect(whyOf(south, [15, 13.5], 'heated-wall')).toBe('1.5 m from the south wall of the heated house');
  });

  it('near any wall of heated house: +2 to +4, +1 to +2', () => {
    expect(offsetF(yardWith([HOUSE]), [15, 22.5])).toEqual({ calm: [2, 3, 4], windy: [1, 1.5, 2] });
    expect(offsetF(yardWith([HOUSE], { coldWindFromDeg: 90 }), [26.5, 18]).calm).toEqual([2, 3, 4]);
    const timber = yardWith([{ ...HOUSE, masonry: false }], { coldWindFromDeg: 180 });
    expect(offsetF(timber, [15, 13.5])).toEqual({ calm: [2, 3, 4], windy: [1, 1.5, 2] });
  });

  it('south side out of north wind: +1 to +3 on windy nights, +1 to +2 on calm ones near what shelters', () => {
    const hedge = yardWith([windbreak(20, 3)]);
    expect(offsetF(hedge, [15, 18.5]).windy).toEqual([1, 2, 3]);
    const calm = offsetF(hedge, [15, 18.9]).calm[1];
    expect(calm).toBeGreaterThanOrEqual(1);
    expect(calm).toBeLessThanOrEqual(2);
    expect(whyOf(hedge, [15, 18], 'wind-shelter')).toBe(
      'out of the cold north wind, 2.0 m behind a windbreak',
    );
  });

  // From memory, windbreak studies: strongest to about 5 heights downwind, lost by about 20.
  it('shelters to five heights, fades to twenty, does nothing upwind', () => {
    const windyAt = (north: number, fromDeg = 0) =>
      offsetF(yardWith([windbreak(20, 3)], { coldWindFromDeg: fromDeg }), [15, north]).windy[1];
    expect(windyAt(8)).toBe(2);
    expect(windyAt(20 - 3 * 13)).toBeGreaterThan(0.6);
    expect(windyAt(20 - 3 * 13)).toBeLessThan(1.2);
    // Nothing of the shelter is left; the sky that a far row hides is next to nothing.
    expect(windyAt(20 - 3 * 20)).toBeLessThan(0.001);
    expect(windyAt(10, 180)).toBeLessThan(0.1);
  });

  it('lets pickets shelter half as much', () => {
    const fence = (open: boolean) =>
      offsetF(yardWith([wall({ masonry: false, open, heightM: 2 })]), [15, 18]).windy[1];
    expect(fence(false)).toBe(2);
    expect(fence(true)).toBe(1);
  });

  it('under tree canopy or overhang: +2 to +5, 0 to +1', () => {
    const crown: YardThing = {
      id: 'oak',
      kind: 'canopy',
      outline: rectangle(-10, -10, 40, 40),
      baseM: 2.5,
      heightM: 9,
      density: 0.8,
    };
    expect(offsetF(yardWith([crown]), [15, 15])).toEqual({ calm: [2, 3.5, 5], windy: [0, 0.5, 1] });
    expect(whyOf(yardWith([crown]), [15, 15], 'sky-hidden')).toBe('80 % of the sky is hidden');
  });

  it('paved court +1 to +3, 0 to +1; bare soil against lawn; mulch -1 to -2; pond 0 to +1', () => {
    const on = (thing: object) =>
      offsetF(
        yardWith([{ id: 'area', outline: rectangle(10, 10, 20, 20), ...thing } as unknown as YardThing]),
        [15, 15],
      );
    expect(on({ kind: 'paving' })).toEqual({ calm: [1, 2, 3], windy: [0, 0.5, 1] });
    expect(on({ kind: 'ground', cover: 'bare' })).toEqual({ calm: [0.2, 1, 1.8], windy: [0, 0, 0] });
    for (const cover of ['mulch', 'tall-grass']) {
      expect(on({ kind: 'ground', cover })).toEqual({ calm: [-2, -1.5, -1], windy: [0, 0, 0] });
    }
    const pond = yardWith([{ id: 'pond', kind: 'water', outline: rectangle(10, 10, 20, 20) }]);
    expect(offsetF(pond, [9, 15])).toEqual({ calm: [0, 0.5, 1], windy: [0, 0, 0] });
  });

  it('per metre of height above a local hollow +0.3 to +0.9; low spot no colder than -3 to -8', () => {
    const hollow = (byM: number) =>
      offsetF(yardWith([{ id: 'dip', kind: 'hollow', at: [15, 15], byM, radiusM: 10 }]), [15, 15]).calm;
    for (const perMetre of hollow(1)) {
      expect(perMetre).toBeLessThanOrEqual(-0.3);
      expect(perMetre).toBeGreaterThanOrEqual(-0.9);
    }
    expect(hollow(1)[1]).toBeCloseTo(-0.6, 2);
    expect(hollow(9.2)).toEqual([-8, -5.5, -3]);
    expect(hollow(15)).toEqual([-8, -5.5, -3]);
  });

  it('mid-slope +2 to +5, 0 to -1; crest +1 to +4, -1 to -2', () => {
    const on = (position: 'foot' | 'middle' | 'crest', towardsDeg = 0) =>
      offsetF(yardWith([], { slope: { towardsDeg, percent: 5, position } }), [15, 15]);
    expect(on('middle')).toEqual({ calm: [2, 3.5, 5], windy: [-1, -0.5, 0] });
    expect(on('middle', 180).windy).toEqual([0, 0, 0]);
    expect(on('crest')).toEqual({ calm: [1, 2.5, 4], windy: [-2, -1.5, -1] });
    expect(on('foot')).toEqual({ calm: [0, 0, 0], windy: [0, 0, 0] });
  });

  it('shore of a big lake: +2 to +5 within 500 m, +1 to +2 at 2 km, windy only where the wind crosses it', () => {
    const lake = (distanceM: number, bearingDeg = 0, kind: 'lake' | 'sea' = 'lake') =>
      offsetF(yardWith([], { bigWater: { bearingDeg, distanceM, kind } }), [15, 15]);
    // The cap of +3 °F on windy nights cuts the row's +2 to +4.
    expect(lake(300)).toEqual({ calm: [2, 3.5, 5], windy: [2, 3, 3] });
    expect(lake(2000).calm[1]).toBeCloseTo(1.5, 6);
    expect(lake(300, 180).windy).toEqual([0, 0, 0]);
    expect(lake(300, 180).calm[1]).toBeCloseTo(1.75, 6);
    // Sea within 1 km: +4 to +8, +2 to +5, 0 with offshore wind; capped at +8 and +3.
    expect(lake(900, 0, 'sea').calm).toEqual([4, 6, 8]);
    expect(lake(900, 180, 'sea').windy).toEqual([0, 0, 0]);
  });
});

describe('each mechanism once', () => {
  it('counts a wall’s warmth or the sky it hides, not both', () => {
    const brick = yardWith([wall({})], { coldWindFromDeg: 180 });
    expect(offsetF(brick, [15, 18.5]).calm).toEqual([1, 1.5, 2]);
    const sky = offsetAt(prepareYard(brick, LAT), [15, 18.5]).mechanisms.find(
      ({ id }) => id === 'sky-hidden',
    );
    expect(sky?.gain.calm.centreC ?? 0).toBe(0);
    // Behind it, where no sun warms it, what counts is the sky it hides.
    expect(idsAt(brick, [15, 21.5])).toContain('sky-hidden');
    expect(idsAt(brick, [15, 21.5])).not.toContain('warm-wall');
  });

  it('counts what a roof hides beside a wall besides', () => {
    const roof: YardThing = {
      id: 'porch',
      kind: 'canopy',
      outline: rectangle(5, 11, 25, 15),
      baseM: 2.4,
      heightM: 2.6,
      density: 1,
    };
    const bare = offsetF(yardWith([HOUSE]), [15, 13.5]).calm;
    const roofed = offsetF(yardWith([HOUSE, roof]), [15, 13.5]).calm;
    expect(roofed[1]).toBeGreaterThan(bare[1] + 0.5);
    // Handbook, protection table: under eave or open porch on south side +3 to +6.
    expect(roofed[1]).toBeGreaterThanOrEqual(3);
    expect(roofed[1]).toBeLessThanOrEqual(6.75);
  });

  it('takes the larger of shelter and the heated wall on windy nights', () => {
    expect(offsetF(yardWith([HOUSE]), [15, 13.5]).windy).toEqual([1, 2, 3]);
  });
});

describe('cold air', () => {
  const onSlope = (things: readonly YardThing[]) =>
    yardWith(things, { slope: { towardsDeg: 180, percent: 4, position: 'foot' } });

  it('is dammed uphill of a closed wall, not of pickets and not on the flat', () => {
    const timber = wall({ masonry: false, heightM: 1.5, line: [[-50, 10], [80, 10]] }); // prettier-ignore
    const uphill: PlanPoint = [15, 12];
    const free = offsetAt(prepareYard(onSlope([]), LAT), uphill).gain.calm.centreC;
    const airOf = (yard: Yard) =>
      offsetAt(prepareYard(yard, LAT), uphill).mechanisms.find(({ id }) => id === 'cold-air')?.gain.calm
        .centreC ?? 0;
    expect(airOf(onSlope([timber]))).toBeLessThan(free - 0.2);
    expect(airOf(onSlope([{ ...timber, open: true } as YardThing]))).toBeCloseTo(free, 9);
    expect(airOf(yardWith([timber]))).toBe(0);
    // Downhill of the wall nothing stands.
    const below = offsetAt(prepareYard(onSlope([timber]), LAT), [15, 8]).mechanisms;
    expect(below.find(({ id }) => id === 'cold-air')?.why).toBe(
      '0.3 m below the open ground, where cold air collects',
    );
  });
});

describe("the reader's own degrees", () => {
  it('replace the centre and narrow the range', () => {
    const own = { 'heated-wall': { calmC: 1, windyC: 0.5 }, 'warm-wall': { calmC: 0.5, windyC: 0 } };
    const { gain } = offsetAt(prepareYard(yardWith([HOUSE], { own, coldWindFromDeg: 180 }), LAT), [15, 13.5]);
    expect(gain.calm.centreC).toBeCloseTo(1.5, 12);
    expect(gain.windy.centreC).toBeCloseTo(0.5, 12);
    expect(celsiusDifferenceToFahrenheit(gain.calm.highC - gain.calm.lowC)).toBeCloseTo(1.5, 9);
  });

  it('are held by the cap too, and it says so', () => {
    const own = { 'heated-wall': { calmC: 9, windyC: 9 } };
    const { gain, held } = offsetAt(prepareYard(yardWith([HOUSE], { own }), LAT), [15, 13.5]);
    expect(celsiusDifferenceToFahrenheit(gain.calm.centreC)).toBeCloseTo(8, 9);
    expect(celsiusDifferenceToFahrenheit(gain.windy.centreC)).toBeCloseTo(3, 9);
    expect(held).toEqual({ calm: true, windy: true });
  });
});

describe('uncertainty', () => {
  it('adds independent mechanisms as root of the sum of squares', () => {
    const both = yardWith([
      { id: 'court', kind: 'paving', outline: rectangle(10, 10, 20, 20) },
      { id: 'mulch', kind: 'ground', cover: 'mulch', outline: rectangle(10, 10, 20, 20) },
    ]);
    // 2 ± 1 and -1.5 ± 0.5 °F.
    const [low, centre, high] = offsetF(both, [15, 15]).calm;
    expect(centre).toBeCloseTo(0.5, 6);
    expect(high - centre).toBeCloseTo(Math.hypot(1, 0.5), 5);
    expect(centre - low).toBeCloseTo(Math.hypot(1, 0.5), 5);
  });
});
