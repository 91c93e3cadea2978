import { describe, expect, it } from 'vitest';
import type { PairedNight } from '../../../analysis/spot/thermometer/paired-night.ts';
import { offsetExtent, offsetTicks, stackDots } from '../../../web/charts/offset-by-kind.ts';

const night = (day: number, differenceC: number): PairedNight => ({
  day,
  kind: 'calm',
  stationC: 0,
  readingC: differenceC,
  differenceC,
  line: day,
});

describe('offsets by kind of night', () => {
  it('stacks nights that would lie on each other, and loses none', () => {
    const dots = stackDots([night(1, 1), night(2, 1.01), night(3, 0.99), night(4, 3)], 0.5);
    expect(dots.map(({ pair }) => pair.day).sort()).toEqual([1, 2, 3, 4]);
    expect(dots.filter(({ pair }) => pair.differenceC < 2).map(({ step }) => step)).toEqual([0, -1, 1]);
  });

  it('has an axis that holds every night, every range and no offset at all', () => {
    const rows = [
      { kind: 'calm' as const, pairs: [night(1, 2)], spread: { lowC: 1, centreC: 2, highC: 5 } },
      { kind: 'windy' as const, pairs: [night(2, 3)], spread: null },
    ];
    const [low, high] = offsetExtent(rows);
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(5);
  });

  it.each(['F', 'C'] as const)('has round marks in °%s, 0 among them', (unit) => {
    const ticks = offsetTicks([-2.3, 4.1], unit, 8);
    expect(ticks.length).toBeLessThanOrEqual(9);
    expect(ticks.find(({ label }) => label === '0')?.valueC).toBeCloseTo(0, 10);
    for (const { valueC, label } of ticks) {
      expect(valueC * (unit === 'F' ? 1.8 : 1)).toBeCloseTo(Number(label.replace('−', '-')), 8);
    }
  });
});
