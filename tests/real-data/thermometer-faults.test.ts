import { beforeAll, describe, expect, it } from 'vitest';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import { calibrate, NO_CHOICES } from '../../analysis/spot/thermometer/calibrate.ts';
import type { FaultId } from '../../analysis/spot/thermometer/fault.ts';
import { swapped } from '../../analysis/spot/thermometer/mend.ts';
import type { ReadingUnit, SpotReading } from '../../analysis/spot/thermometer/spot-reading.ts';
import { civilDate } from '../../analysis/units/calendar.ts';
import { celsiusToFahrenheit } from '../../analysis/units/temperature.ts';
import { haveRealData } from './real-records.ts';
import { pairsOfNights } from './thermometer-stations.ts';

/** Every second cold night of a winter, at most 45, of a station that plays the spot. */
interface Yard {
  readonly station: KeptNights;
  readonly readings: readonly SpotReading[];
}

const READINGS_MIN = 20;
const READINGS_MAX = 45;

function yardsOf(station: KeptNights, spot: KeptNights): Yard[] {
  const rows = [...spot.day.keys()].filter((row) => {
    const { month } = civilDate(spot.day[row]!);
    return month <= 3 || month >= 11;
  });
  return [...new Set(rows.map((row) => spot.winter[row]!))]
    .filter((winter) => winter % 3 === 0)
    .map((winter) => ({
      station,
      readings: rows
        .filter((row) => spot.winter[row] === winter)
        .filter((_, i) => i % 2 === 0)
        .slice(0, READINGS_MAX)
        .map((row, i) => ({
          day: spot.day[row]!,
          minimum: spot.sustained[0]![row]! / 100,
          maximum: null,
          line: i + 2,
        })),
    }))
    .filter(({ readings }) => readings.length >= READINGS_MIN)
    .filter((yard) => faultsOf(yard).paired >= READINGS_MIN / 2);
}

function faultsOf(
  { station, readings }: Yard,
  change: (reading: SpotReading) => SpotReading = (reading) => reading,
  unit: ReadingUnit = 'C',
): { ids: FaultId[]; paired: number } {
  const read = {
    readings: readings.map(change).sort((a, b) => a.day - b.day),
    unit,
    order: null,
    orderGuessed: false,
    perNight: 1,
    skipped: [],
    notes: [],
  };
  const { faults, pairing } = calibrate(read, { nights: station, from: '', latDeg: 35 }, NO_CHOICES, 'C');
  return { ids: faults.map(({ id }) => id), paired: pairing.pairs.length };
}

describe.skipIf(!haveRealData)('faults in readings, played by real neighbouring stations', () => {
  let yards: Yard[] = [];
  beforeAll(async () => {
    yards = (await pairsOfNights()).flatMap(([station, spot]) => yardsOf(station, spot));
  }, 60_000);
  const share = (holds: (yard: Yard) => boolean): number => yards.filter(holds).length / yards.length;

  it('are seldom seen where there are none', () => {
    const [any, dates] = [
      share((yard) => faultsOf(yard).ids.length > 0),
      share((yard) => faultsOf(yard).ids.some((id) => id === 'swapped' || id === 'shifted' || id === 'unit')),
    ];
    console.log(`${yards.length} winters of good readings: a fault told in ${(100 * any).toFixed(1)} %`);
    expect(yards.length).toBeGreaterThan(100);
    expect(any).toBeLessThan(0.05);
    expect(dates).toBeLessThan(0.01);
  });

  it.each<[string, FaultId, (reading: SpotReading) => SpotReading, ReadingUnit, number]>([
    ['dates a day late', 'shifted', (r) => ({ ...r, day: r.day + 1 }), 'C', 0.85],
    ['dates a day early', 'shifted', (r) => ({ ...r, day: r.day - 1 }), 'C', 0.85],
    ['day and month exchanged', 'swapped', (r) => ({ ...r, day: swapped(r.day) }), 'C', 0.8],
    ['°C taken for °F', 'unit', (r) => r, 'F', 0.85],
    ['°F taken for °C', 'unit', (r) => ({ ...r, minimum: celsiusToFahrenheit(r.minimum) }), 'C', 0.9],
  ])('are mostly found: %s', (name, id, change, unit, least) => {
    const found = share((yard) => faultsOf(yard, change, unit).ids.includes(id));
    console.log(`${name}: found in ${(100 * found).toFixed(0)} %`);
    expect(found).toBeGreaterThan(least);
  });
});
