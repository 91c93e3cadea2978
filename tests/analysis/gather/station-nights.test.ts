import { expect, it } from 'vitest';
import { stationNights } from '../../../analysis/gather/station-nights.ts';
import type { RawDailyReadings, RawHourlyReadings } from '../../../analysis/records/series.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';

const STATION = { id: 'ZZTEST1', name: 'Invented', lat: 31, lon: -42, elevationM: 10 };
const FIRST = dayNumber(2001, 1, 1);
const known = (count: number) => ({
  station: STATION,
  windMs: new Float64Array(count).fill(1),
  file: 'ZZTEST1.csv',
  line: Int32Array.from({ length: count }, (_, at) => at + 2),
});

/** Forty days from 3 to 13 °C. */
const daily: RawDailyReadings = {
  ...known(40),
  day: Int32Array.from({ length: 40 }, (_, at) => FIRST + at),
  tminC: Float64Array.from({ length: 40 }, (_, at) => 3 + (at % 3) / 10),
  tmaxC: Float64Array.from({ length: 40 }, (_, at) => 13 - (at % 4) / 10),
  tminFlag: new Uint8Array(40),
  tmaxFlag: new Uint8Array(40),
  readingHour: new Uint8Array(40).fill(24),
};
/** The last twenty of them hour by hour, down to 1 °C at 9 UTC, the end of the night there. */
const hourly: RawHourlyReadings = {
  ...known(480),
  timeUtcH: Float64Array.from({ length: 480 }, (_, hour) => (FIRST + 20) * 24 + hour),
  tempC: Float64Array.from({ length: 480 }, (_, hour) => 7 - 6 * Math.cos(((hour - 9) / 12) * Math.PI)),
  tempFlag: new Uint8Array(480),
  localStandard: false,
};

it('takes nights from hourly readings where there are any, from daily ones elsewhere, and says from which', () => {
  const [fromDaily, fromHourly, both] = [[daily], [hourly], [daily, hourly]].map((raw) =>
    stationNights(STATION, raw),
  );
  expect([fromDaily, fromHourly, both].map(({ basis }) => basis)).toEqual(['daily', 'hourly', 'both']);
  const minimumOn = ({ nights }: typeof both, at: number): number =>
    nights.sustained[0][FIRST + at - nights.firstNight] / 100;
  expect(minimumOn(fromDaily, 30)).toBeCloseTo(3, 1);
  expect(minimumOn(fromHourly, 30)).toBeCloseTo(1, 1);
  expect([minimumOn(both, 10), minimumOn(both, 30)]).toEqual([
    minimumOn(fromDaily, 10),
    minimumOn(fromHourly, 30),
  ]);
});
