import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  differenceIn,
  formatDifference,
  formatTemperature,
  formatTemperatureRange,
  temperatureIn,
  temperatureTicks,
  temperatureToC,
} from '../../../web/format/temperatures.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');

describe('temperatures for people', () => {
  // Both columns are the thermometer's: 32 °F = 0 °C, 212 °F = 100 °C, -40 on both.
  it.each([
    [0, '32 °F', '0.0 °C'],
    [-40, '-40 °F', '-40.0 °C'],
    [100, '212 °F', '100.0 °C'],
    [-3.3333, '26 °F', '-3.3 °C'],
    [-17.9, '0 °F', '-17.9 °C'],
  ])('%d °C', (temperatureC, inF, inC) => {
    expect(plain(formatTemperature(temperatureC, 'F'))).toBe(inF);
    expect(plain(formatTemperature(temperatureC, 'C'))).toBe(inC);
  });

  it('show a dash for the unknown', () => {
    expect(formatTemperature(null, 'F')).toBe('–');
    expect(formatTemperature(NaN, 'C')).toBe('–');
  });

  it('never mix up a temperature and a difference: 5 °C is 41 °F, but 9 °F warmer', () => {
    expect(temperatureIn(5, 'F')).toBeCloseTo(41, 12);
    expect(differenceIn(5, 'F')).toBeCloseTo(9, 12);
    expect(plain(formatDifference(5, 'F'))).toBe('+9.0 °F');
    expect(plain(formatDifference(-1.1, 'C'))).toBe('-1.1 °C');
    expect(plain(formatDifference(0.01, 'C'))).toBe('0 °C');
  });

  it('write a range once when both ends round alike', () => {
    expect(plain(formatTemperatureRange(-5, -3.3333, 'F'))).toBe('23 to 26 °F');
    expect(plain(formatTemperatureRange(-3.34, -3.33, 'C'))).toBe('-3.3 °C');
  });

  it('come back from the shown unit', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (temperatureC) => {
        for (const unit of ['F', 'C'] as const) {
          expect(temperatureToC(temperatureIn(temperatureC, unit), unit)).toBeCloseTo(temperatureC, 9);
        }
      }),
    );
  });
});

describe('axis marks', () => {
  it('are round in the shown unit', () => {
    expect(temperatureTicks(-10, 2, 'F').map((tick) => tick.label)).toEqual(['15', '20', '25', '30', '35']);
    expect(
      plain(
        temperatureTicks(-10, 2, 'C')
          .map((tick) => tick.label)
          .join(),
      ),
    ).toBe('-10,-8,-6,-4,-2,0,2');
  });

  it('lie inside the axis, evenly, whatever the axis', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 40, noNaN: true }),
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.constantFrom('F' as const, 'C' as const),
        (lowC, span, unit) => {
          const ticks = temperatureTicks(lowC, lowC + span, unit);
          expect(ticks.length).toBeLessThanOrEqual(14);
          for (const tick of ticks) {
            expect(tick.temperatureC).toBeGreaterThanOrEqual(lowC - 1e-6);
            expect(tick.temperatureC).toBeLessThanOrEqual(lowC + span + 1e-6);
          }
        },
      ),
    );
    expect(temperatureTicks(5, 5, 'C')).toEqual([]);
  });
});
