import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blendMeasured, type MeasuredKind } from '../../../analysis/spot/measured-offset.ts';
import { readMeasuredText, writeMeasuredText } from '../../../analysis/spot/measured-text.ts';
import type { GainSpread, Spread } from '../../../analysis/winter/gain-spread.ts';

const kind = (lowC: number, centreC: number, highC: number, nights: number): MeasuredKind => ({
  spread: { lowC, centreC, highC },
  nights,
});
const TABLE: GainSpread = {
  calm: { lowC: 1, centreC: 2, highC: 4 },
  windy: { lowC: 0, centreC: 0.5, highC: 1 },
};
const hundredths = fc.integer({ min: -1500, max: 1500 });
const anyKind = fc
  .tuple(hundredths, hundredths, hundredths, fc.integer({ min: 1, max: 40 }))
  .map(([a, b, c, nights]) => {
    const [low, centre, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
    return kind(low / 100, centre / 100, high / 100, nights);
  });

describe('a measured offset beside the table', () => {
  it('weighs both by the inverse square of their standard errors (worked by hand)', () => {
    // 5 of 10 nights: the table keeps half its weight. Errors 1.5 / 1.6449 and 0.75 / 1.6449, so weights
    // 0.5 / 0.8316 = 0.6012 and 1 / 0.2079 = 4.810; centre (0.6012 * 2 + 4.810 * 4) / 5.411 = 3.778; half range 1.6449 / 2.326.
    const { calm } = blendMeasured(TABLE, { calm: kind(3.25, 4, 4.75, 5), windy: null });
    expect(calm.centreC).toBeCloseTo(3.778, 3);
    expect(calm.highC - calm.centreC).toBeCloseTo(0.707, 3);
  });

  it('stands alone from 10 nights on, beyond the caps of the table too', () => {
    const calm = kind(4, 5.5, 7, 10);
    expect(blendMeasured(TABLE, { calm, windy: null }).calm).toEqual(calm.spread);
  });

  it('leaves the table where nothing was measured', () => {
    expect(blendMeasured(TABLE, { calm: null, windy: null })).toEqual(TABLE);
  });

  it('is heard against an open lawn, whose table says 0 without a range', () => {
    const open: Spread = { lowC: 0, centreC: 0, highC: 0 };
    const { calm } = blendMeasured({ calm: open, windy: open }, { calm: kind(1, 2, 3, 6), windy: null });
    expect(calm.centreC).toBeGreaterThan(1.2);
  });

  it('lies between table and measured, nearer to the measured with every night', () => {
    fc.assert(
      fc.property(anyKind, (measured) => {
        const { calm } = blendMeasured(TABLE, { calm: measured, windy: null });
        const ends = [TABLE.calm.centreC, measured.spread.centreC].sort((a, b) => a - b) as [number, number];
        expect(calm.centreC).toBeGreaterThanOrEqual(ends[0] - 1e-9);
        expect(calm.centreC).toBeLessThanOrEqual(ends[1] + 1e-9);
        const more = blendMeasured(TABLE, {
          calm: { ...measured, nights: measured.nights + 1 },
          windy: null,
        });
        const distance = (spread: Spread): number => Math.abs(spread.centreC - measured.spread.centreC);
        expect(distance(more.calm)).toBeLessThanOrEqual(distance(calm) + 1e-9);
      }),
    );
  });
});

describe('a measured offset as text', () => {
  it('is short and needs no escaping', () => {
    const text = writeMeasuredText({ calm: kind(0.63, 1.45, 2.27, 15), windy: kind(-0.2, 0.3, 0.9, 6) });
    expect(text).toBe('c63_145_227_15w-20_30_90_6');
    expect(encodeURIComponent(text)).toBe(text);
  });

  it('reads what it writes', () => {
    const option = fc.option(anyKind);
    fc.assert(
      fc.property(option, option, (calm, windy) => {
        fc.pre(calm !== null || windy !== null);
        expect(readMeasuredText(writeMeasuredText({ calm, windy }))).toEqual({ calm, windy });
      }),
    );
  });

  it.each([
    ['', ''],
    ['c1_2_3', ''],
    ['x', ''],
    ['c200_100_300_5', 'out of order'],
    ['c0_100_2500_5', 'limit of 20'],
    ['c0_100_200_0', '0 nights'],
    ['w0_1_2_5c0_1_2_5', ''],
    ['c1e9_2_3_4', ''],
  ])('refuses %j with one sentence', (text, part) => {
    const read = (): unknown => readMeasuredText(text);
    expect(read).toThrow(/^measured=.*\.$/);
    if (part) expect(read).toThrow(part);
  });
});
