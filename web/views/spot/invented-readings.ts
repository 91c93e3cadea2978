import { t } from '../../../analysis/language/t.ts';
import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { NIGHT_KINDS } from '../../../analysis/records/nights.ts';
import { formatIsoDay } from '../../../analysis/units/calendar.ts';
import { celsiusToFahrenheit } from '../../../analysis/units/temperature.ts';

const WINTERS = 6;
const NIGHTS_A_WINTER = 9;
const OFFSET_C = { calm: 1.7, windy: 0.6, unclear: 1 } as const;
const SCATTER_C = 0.8;

/** Readings of an invented thermometer beside an invented station, on the coldest mornings of its last winters. */
export function inventedReadings(nights: KeptNights): string {
  const random = seededRandom(20);
  const minima = nights.sustained[0]!;
  const winters = [...new Set(nights.winter)].sort((a, b) => b - a).slice(0, WINTERS);
  const rows = winters.flatMap((winter) =>
    [...nights.day.keys()]
      .filter((row) => nights.winter[row] === winter)
      .sort((a, b) => minima[a]! - minima[b]!)
      .slice(0, NIGHTS_A_WINTER),
  );
  const lines = rows
    .sort((a, b) => a - b)
    .map((row) => {
      const offsetC = OFFSET_C[NIGHT_KINDS[nights.kind[row]!]!];
      const minimumC = minima[row]! / 100 + offsetC + SCATTER_C * random.normal();
      return `${formatIsoDay(nights.day[row]!)},${celsiusToFahrenheit(minimumC).toFixed(1)}`;
    });
  return [t`Morning,Minimum (°F)`, ...lines].join('\n');
}
