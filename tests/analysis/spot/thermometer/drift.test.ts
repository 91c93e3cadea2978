import { describe, expect, it } from 'vitest';
import { driftOf, driftSentences } from '../../../../analysis/spot/thermometer/drift.ts';
import type { PairedNight } from '../../../../analysis/spot/thermometer/paired-night.ts';

const WOBBLE = [0.2, -0.1, 0.3, -0.3, 0.1, -0.2];
function nights(
  count: number,
  differenceC: (stationC: number, day: number) => number,
  everyDays = 5,
): PairedNight[] {
  return Array.from({ length: count }, (_, i) => {
    const stationC = -6 + ((i * 5) % 11);
    const off = differenceC(stationC, i * everyDays) + WOBBLE[i % 6]!;
    return {
      day: i * everyDays,
      kind: 'calm',
      stationC,
      readingC: stationC + off,
      differenceC: off,
      line: i + 1,
    };
  });
}

describe('an offset that changes', () => {
  it('is told by the level of the night: spots milder still on the coldest nights', () => {
    const drift = driftOf(nights(20, (stationC) => 1 - 0.2 * stationC));
    // d = 1 - 0.2 s and level s + d / 2, so that d changes by -0.2 / 0.9 for each degree of level.
    expect(drift.perDegree!.slope).toBeCloseTo(-0.22, 1);
    expect(driftSentences(drift, 'F').join()).toMatch(
      /colder the night, the milder the spot .* 0\.2 degrees/,
    );
  });

  it('is told by time, in degrees a month of the unit shown', () => {
    const drift = driftOf(nights(20, (_, day) => day / 30));
    expect(drift.perMonth!.slope).toBeCloseTo(1, 1);
    expect(driftSentences(drift, 'F').join()).toMatch(/rises by about 1\.[789] °F a month/);
  });

  it('is not seen in a steady one, nor in few nights, nor within a month', () => {
    expect(driftSentences(driftOf(nights(20, () => 1)), 'F')).toEqual([]);
    expect(driftOf(nights(7, (s) => s))).toEqual({ perDegree: null, perMonth: null });
    expect(driftOf(nights(20, (_, day) => day, 1)).perMonth).toBeNull();
  });
});
