import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { NIGHT_KINDS } from '../../../analysis/records/nights.ts';
import { formatIsoDay } from '../../../analysis/units/calendar.ts';
import { celsiusToFahrenheit } from '../../../analysis/units/temperature.ts';

const NIGHTS = 30;
const OFFSET_C = { calm: 1.7, windy: 0.6, unclear: 1 } as const;
const SCATTER_C = 0.8;

/** Readings of an invented thermometer beside an invented station, over its last two winters with enough cold nights. */
export function inventedReadings(nights: KeptNights): string {
  const random = seededRandom(20);
  const winters = [...new Set(nights.winter)].sort((a, b) => b - a).slice(0, 2);
  const rows = [...nights.day.keys()].filter((row) => winters.includes(nights.winter[row]!));
  const step = Math.max(1, Math.floor(rows.length / NIGHTS));
  const lines = rows
    .filter((_, i) => i % step === 0)
    .map((row) => {
      const stationC = nights.sustained[0]![row]! / 100;
      const minimumC = stationC + OFFSET_C[NIGHT_KINDS[nights.kind[row]!]!] + SCATTER_C * random.normal();
      return `${formatIsoDay(nights.day[row]!)},${celsiusToFahrenheit(minimumC).toFixed(1)}`;
    });
  return ['Morning,Minimum (°F)', ...lines].join('\n');
}
