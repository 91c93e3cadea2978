import { createReadStream } from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { cleanHourly } from '../../analysis/clean/clean-hourly.ts';
import { sustainedTonightC } from '../../analysis/cover/night-shape.ts';
import { nightsFromHourly } from '../../analysis/night/nights-from-hourly.ts';
import { readRecords } from '../../analysis/read/read-records.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_HOURS, type NightTable } from '../../analysis/records/nights.ts';
import { celsiusDifferenceToFahrenheit } from '../../analysis/units/temperature.ts';
import { shippedColumnMaps } from '../../analysis/read/shipped-column-maps.ts';
import { haveRealData, REAL_DATA } from './real-records.ts';

async function nightsOf(file: string, lat: number, lon: number): Promise<NightTable> {
  const stream = Readable.toWeb(createReadStream(path.join(REAL_DATA, 'hourly', file)));
  const maps = shippedColumnMaps();
  const read = await readRecords(stream as ReadableStream<Uint8Array>, { fileName: file, unit: 'F', maps });
  const [raw] = read.hourly;
  const station = { id: file, name: file, lat, lon, elevationM: null };
  return nightsFromHourly(cleanHourly([{ ...raw, station }]).series);
}

/** Hours at or below freezing between the kept durations; `null` where the night wasn't below, or all day. */
function frostHours(levels: readonly number[]): number | null {
  const j = levels.findIndex((level) => level > 0);
  if (j < 1) return null;
  const [before, after] = [SUSTAINED_HOURS[j - 1], SUSTAINED_HOURS[j]];
  return before + ((0 - levels[j - 1]) / (levels[j] - levels[j - 1])) * (after - before);
}

describe.skipIf(!haveRealData)('the shape of a night against hourly readings', () => {
  // Outside truth: airports' hourly readings. Bounds are a little above what night-shape.ts says of four airports.
  it('tells sustained cold from the minimum and the hours of frost within 1 °F on average', async () => {
    const tables = [
      await nightsOf('columbia_sc_2013-2022.csv.gz', 33.942, -81.118),
      await nightsOf('nashville_2014-2023.csv.gz', 36.119, -86.689),
    ];
    for (const hours of [2, 4, 6, 8, 12] as const) {
      const j = SUSTAINED_HOURS.indexOf(hours);
      const errorsF: number[] = [];
      for (const { count, sustained } of tables) {
        for (let i = 0; i < count; i++) {
          const stored = sustained.map((column) => column[i]);
          const frost = stored.includes(MISSING_HUNDREDTHS) ? null : frostHours(stored);
          if (frost === null || frost < hours) continue;
          const told = sustainedTonightC({ minimumC: stored[0] / 100, hoursBelowFreezing: frost }, hours);
          errorsF.push(celsiusDifferenceToFahrenheit(told - stored[j] / 100));
        }
      }
      const mean = (values: number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
      expect(errorsF.length, `${hours} h`).toBeGreaterThan(80);
      expect(mean(errorsF.map(Math.abs)), `${hours} h`).toBeLessThan(0.9);
      expect(Math.abs(mean(errorsF)), `${hours} h`).toBeLessThan(0.5);
    }
  });
});
