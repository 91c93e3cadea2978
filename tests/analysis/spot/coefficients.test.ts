import { describe, expect, it } from 'vitest';
import { coefficientsOf, TABLE_COEFFICIENTS } from '../../../analysis/spot/coefficients.ts';
import { MECHANISM_IDS, type MechanismId } from '../../../analysis/spot/mechanism.ts';
import { sourceOf } from '../../../analysis/tree/sources.ts';
import { celsiusDifferenceToFahrenheit } from '../../../analysis/units/temperature.ts';
import type { Spread } from '../../../analysis/winter/gain-spread.ts';

const inF = ({ lowC, centreC, highC }: Spread) =>
  [lowC, centreC, highC].map((c) => Number(celsiusDifferenceToFahrenheit(c).toFixed(9)));
const tableF = (id: MechanismId, kind: 'calm' | 'windy') => inF(TABLE_COEFFICIENTS[id].gain[kind]);

describe('coefficients', () => {
  // Handbook, microsites, section 1; the centre is the middle of each row.
  it.each([
    ['Near any wall of heated house', 'heated-wall', [2, 3, 4], [1, 1.5, 2]],
    ['Under tree canopy or overhang', 'sky-hidden', [2, 3.5, 5], [0, 0.5, 1]],
    ['Paved court, driveway edge', 'paving', [1, 2, 3], [0, 0.5, 1]],
    ['Thick mulch, tall grass', 'mulch-or-tall-grass', [-2, -1.5, -1], [0, 0, 0]],
    ['Pond under 1 ha', 'pond', [0, 0.5, 1], [0, 0, 0]],
    ['Shore of a big lake', 'big-water', [2, 3.5, 5], [2, 3, 4]],
    ['Low spot where cold air stands', 'cold-air', [-8, -5.5, -3], [0, 0, 0]],
    ['Mid-slope or upper slope, open', 'slope', [2, 3.5, 5], [-1, -0.5, 0]],
  ] as const)('has the row "%s"', (_, id, calmF, windyF) => {
    expect(tableF(id, 'calm')).toEqual(calmF);
    expect(tableF(id, 'windy')).toEqual(windyF);
  });

  // Rows "south or west masonry wall of heated house" +3..+6, +1..+2 and "any wall of heated house" +2..+4, +1..+2.
  it('gives the sun-facing row as sun and heating together', () => {
    const sum = (kind: 'calm' | 'windy') =>
      tableF('warm-wall', kind).map((f, end) => f + tableF('heated-wall', kind)[end]);
    expect(sum('calm')).toEqual([3, 4.5, 6]);
    expect(sum('windy')).toEqual([1, 1.5, 2]);
  });

  // S25: bare soil 2 to 3.6 °F above tall sod, thin mown sod 1.8 °F above tall sod.
  it('measures bare ground against short lawn', () => {
    expect(tableF('bare-ground', 'calm')).toEqual([0.2, 1, 1.8]);
  });

  it('takes the rows of the sea and of the crest where those are near', () => {
    const { 'big-water': sea, slope: crest } = coefficientsOf({
      own: {},
      slope: { towardsDeg: 0, percent: 5, position: 'crest' },
      bigWater: { bearingDeg: 0, distanceM: 100, kind: 'sea' },
    });
    expect([inF(sea.gain.calm), inF(sea.gain.windy)]).toEqual([
      [4, 6, 8],
      [2, 3.5, 5],
    ]);
    expect([inF(crest.gain.calm), inF(crest.gain.windy)]).toEqual([
      [1, 2.5, 4],
      [-2, -1.5, -1],
    ]);
  });

  it("puts the reader's own degrees in the centre and halves the table's range", () => {
    const { paving } = coefficientsOf({
      own: { paving: { calmC: 2, windyC: -0.1 } },
      slope: null,
      bigWater: null,
    });
    const { calm, windy } = TABLE_COEFFICIENTS.paving.gain;
    expect(paving.own).toBe(true);
    expect(paving.gain.calm.centreC).toBe(2);
    expect(paving.gain.windy.centreC).toBe(-0.1);
    expect(paving.gain.calm.highC - paving.gain.calm.lowC).toBeCloseTo((calm.highC - calm.lowC) / 2, 12);
    expect(paving.gain.windy.highC - paving.gain.windy.lowC).toBeCloseTo((windy.highC - windy.lowC) / 2, 12);
  });

  it('orders every range, names every source, and gains no more on windy nights but by shelter and big water', () => {
    for (const id of MECHANISM_IDS) {
      const { gain, sources, name, fullEffect, own } = TABLE_COEFFICIENTS[id];
      for (const { lowC, centreC, highC } of [gain.calm, gain.windy]) {
        expect(lowC).toBeLessThanOrEqual(centreC);
        expect(centreC).toBeLessThanOrEqual(highC);
      }
      for (const key of sources) expect(sourceOf(key), key).not.toBe(key);
      expect(sources.length).toBeGreaterThan(0);
      expect(`${name} ${fullEffect}`).not.toMatch(/south|north/i);
      expect(own).toBe(false);
      if (id !== 'wind-shelter' && gain.calm.centreC > 0) {
        expect(gain.windy.centreC, id).toBeLessThanOrEqual(gain.calm.centreC);
      }
    }
  });
});
