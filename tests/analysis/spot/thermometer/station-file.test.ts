import { describe, expect, it } from 'vitest';
import { stationFileNights } from '../../../../analysis/spot/thermometer/station-file.ts';
import { NIGHT_KINDS } from '../../../../analysis/records/nights.ts';
import { InputError } from '../../../../analysis/records/input-error.ts';
import { dayNumber, formatIsoDay } from '../../../../analysis/units/calendar.ts';

const PLACE = { lat: 31, lon: -42 };
const FIRST = dayNumber(2023, 11, 1);

function stream(text: string): ReadableStream<Uint8Array> {
  return new Blob([text]).stream() as ReadableStream<Uint8Array>;
}

/** 120 invented days in °F: cold nights after mild days, the 40th a windy freeze. */
function days(): { day: number; tmax: number; tmin: number }[] {
  return Array.from({ length: 120 }, (_, i) => ({
    day: FIRST + i,
    tmax: i === 39 || i === 40 ? 36 : 62 + (i % 9),
    tmin: i === 40 ? 26 : 33 + ((i * 7) % 13),
  }));
}
const plain = (head: string): string =>
  [head, ...days().map(({ day, tmax, tmin }) => `${formatIsoDay(day)},${tmax},${tmin}`)].join('\n');

describe('a station file of the reader’s', () => {
  it('becomes nights with their kinds, at or below 10 °C', async () => {
    const found = await stationFileNights(stream(plain('date,tmax_f,tmin_f')), 'airport.csv', PLACE, null);
    expect(found.station.id).toBe('airport');
    expect(found.awayKm).toBeNull();
    const at = found.nights.day.indexOf(FIRST + 40);
    expect(found.nights.sustained[0]![at]).toBe(Math.round(((26 - 32) / 1.8) * 100));
    expect(NIGHT_KINDS[found.nights.kind[at]!]).toBe('windy');
    const kinds = [...found.nights.kind].map((kind) => NIGHT_KINDS[kind]);
    expect(kinds.filter((kind) => kind === 'calm').length).toBeGreaterThan(60);
    expect([...found.nights.winter].every((winter) => winter === 2024)).toBe(true);
    expect(Math.max(...found.nights.sustained[0]!)).toBeLessThanOrEqual(1000);
  });

  it('asks for the unit where the file does not say, in words of the page', async () => {
    const text = plain('date,tmax,tmin');
    const attempt = stationFileNights(stream(text), 'airport.csv', PLACE, null);
    await expect(attempt).rejects.toThrow(InputError);
    await expect(attempt).rejects.toThrow(/airport\.csv doesn't state the unit.*choose °F or °C/);
    const chosen = await stationFileNights(stream(text), 'airport.csv', PLACE, 'F');
    expect(chosen.nights.day.length).toBeGreaterThan(80);
  });

  it('takes the nearest station of several', async () => {
    const rows = days().flatMap(({ day, tmax, tmin }) => {
      const date = formatIsoDay(day);
      const c10 = (f: number): number => Math.round(((f - 32) / 1.8) * 10);
      return [
        `FAR00000001,${date},35,-42,10,Far,${c10(tmax - 9)},${c10(tmin - 9)},",,W,",",,W,"`,
        `NEAR0000001,${date},31.1,-42,10,Near,${c10(tmax)},${c10(tmin)},",,W,",",,W,"`,
      ];
    });
    const head = 'STATION,DATE,LATITUDE,LONGITUDE,ELEVATION,NAME,TMAX,TMIN,TMAX_ATTRIBUTES,TMIN_ATTRIBUTES';
    const found = await stationFileNights(stream([head, ...rows].join('\n')), 'two.csv', PLACE, null);
    expect(found.station.name).toBe('Near');
    expect(found.awayKm).toBeCloseTo(11.1, 0);
  });

  it('is refused in one sentence when it holds no cold night', async () => {
    const warm = ['date,tmax_c,tmin_c', ...days().map(({ day }) => `${formatIsoDay(day)},30,20`)].join('\n');
    await expect(stationFileNights(stream(warm), 'warm.csv', PLACE, null)).rejects.toThrow(
      /^warm\.csv has no night at or below 10 °C/,
    );
  });
});
