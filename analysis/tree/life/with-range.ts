import type { AgeShare, LifeReading } from './life-shapes.ts';
import type { LifeRange } from './life-ranges.ts';

/**
 * A reading with its ranges. Ages beyond the record go on from its last share as the rings go on from there. The range is widened where the
 * record's own share lies outside it.
 */
export function withRange(reading: LifeReading, range: LifeRange): LifeReading {
  const last = reading.living.findLast(({ share }) => share !== null);
  const before = last ? range.reordered[last.age - 1]! : 1;
  const living = reading.living.map((at): AgeShare => {
    const goesOn = before > 0 ? range.reordered[at.age - 1]! / before : 0;
    const share = at.share ?? (last?.share ?? 1) * goesOn;
    return {
      ...at,
      share,
      low: Math.min(range.low[at.age - 1]!, share),
      high: Math.max(range.high[at.age - 1]!, share),
    };
  });
  const years = living.find(({ share }) => share! <= 0.5)?.age ?? null;
  const told = (age: number): number | null => (Number.isFinite(age) ? age : null);
  return {
    ...reading,
    living,
    first_crop: living[reading.first_crop.age - 1]!,
    ten_years: living[9]!,
    twenty_years: living[19]!,
    median_years: {
      years,
      low: told(Math.min(range.medianLow, years ?? Infinity)),
      high: told(Math.max(range.medianHigh, years ?? Infinity)),
    },
  };
}
