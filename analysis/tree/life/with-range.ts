import type { AgeShare, LifeReading } from './life-shapes.ts';
import type { LifeRange } from './life-ranges.ts';

/** A reading with its ranges, widened where the record's own share lies outside them. */
export function withRange(reading: LifeReading, range: LifeRange): LifeReading {
  const living = reading.living.map((at): AgeShare => {
    const { age, share } = at;
    if (share === null) return at;
    return {
      ...at,
      low: Math.min(range.low[age - 1]!, share),
      high: Math.max(range.high[age - 1]!, share),
    };
  });
  const { years } = reading.median_years;
  const told = (age: number): number | null => (Number.isFinite(age) ? age : null);
  return {
    ...reading,
    living,
    first_crop: living[reading.first_crop.age - 1]!,
    ten_years: living[reading.ten_years.age - 1]!,
    twenty_years: living[reading.twenty_years.age - 1]!,
    median_years: {
      years,
      low: told(Math.min(range.medianLow, years ?? Infinity)),
      high: told(Math.max(range.medianHigh, years ?? Infinity)),
    },
  };
}
