import { seededRandom } from '../../../../analysis/math/seeded-random.ts';
import type { ReadingUnit } from '../../../../analysis/spot/thermometer/spot-reading.ts';
import { keptNights, type KeptNights } from '../../../../analysis/records/kept-nights.ts';
import { SUSTAINED_COUNT } from '../../../../analysis/records/nights.ts';
import { dayNumber, formatIsoDay } from '../../../../analysis/units/calendar.ts';
import { celsiusToFahrenheit } from '../../../../analysis/units/temperature.ts';

/** An invented station: the nights of November to March of some winters, each a few degrees from the one before. */
export function inventedStation({ winters = [2022, 2023, 2024], seed = 5 } = {}): KeptNights {
  const random = seededRandom(seed);
  let levelC = 2;
  const rows = winters.flatMap((winter) => {
    const first = dayNumber(winter - 1, 11, 1);
    return Array.from({ length: 151 }, (_, i) => {
      levelC = 2 + 0.5 * (levelC - 2) + 3.5 * random.normal();
      const hundredths = Math.round(100 * levelC);
      const kind = i % 5 === 0 ? 1 : i % 7 === 0 ? 2 : 0;
      return [first + i, winter, kind, ...Array<number>(SUSTAINED_COUNT).fill(hundredths)];
    }).filter((row) => row[3]! <= 1000);
  });
  return keptNights(rows);
}

/** What someone read at a spot beside it: `offsetC` milder, give or take `noiseC`. */
export function readingsBeside(
  nights: KeptNights,
  { count = 24, offsetC = 1.5, noiseC = 0.8, unit = 'F' as ReadingUnit, from = 170, step = 2, seed = 9 } = {},
): { day: number; shown: number }[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const row = from + i * step;
    const valueC = nights.sustained[0]![row]! / 100 + offsetC + noiseC * random.normal();
    const shown = unit === 'F' ? celsiusToFahrenheit(valueC) : valueC;
    return { day: nights.day[row]!, shown: Math.round(shown * 10) / 10 };
  });
}

export function asText(
  readings: readonly { day: number; shown: number }[],
  heading = 'Date,Minimum',
): string {
  return [heading, ...readings.map(({ day, shown }) => `${formatIsoDay(day)},${shown}`)].join('\n');
}
