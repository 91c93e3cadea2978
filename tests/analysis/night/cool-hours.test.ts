import { describe, expect, it } from 'vitest';

import { coolHoursOfNights, scaledCoolHours } from '../../../analysis/night/cool-hours.ts';
import { nightsFromDaily } from '../../../analysis/night/nights-from-daily.ts';
import { nightsFromHourly } from '../../../analysis/night/nights-from-hourly.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import { daily, hourly, hours } from './series.ts';

const FIRST = dayNumber(2021, 1, 1);

describe('cool hours of the last 500', () => {
  it('of nights with known hours: 20 whole nights and the last 20 h of the one before', () => {
    const whole = new Float32Array(30).fill(6);
    const end = new Float32Array(30).fill(5);
    whole[3] = 10;
    end[3] = 8;
    const out = new Int16Array(30).fill(-1);
    coolHoursOfNights({ whole, end }, out);
    expect(out[19]).toBe(-1);
    expect(out[20]).toBe(20 * 6 + 4 + 5); // nights 1 to 20 whole, night 0 by its end
    expect(out[23]).toBe(20 * 6 + 8); // night 3 by its end
    expect(out[24]).toBe(20 * 6 + 5);
  });

  it('of a week hand-counted in a warm month of hourly readings: 7 nights of 8 cool hours', () => {
    const times = hours(24 * FIRST, 24 * (FIRST + 40));
    const temps = times.map((time) => {
      const day = Math.floor(time / 24) - FIRST;
      const hour = time % 24;
      return day >= 25 && day < 32 && hour >= 0 && hour <= 8 ? 9 : 20;
    });
    const nights = nightsFromHourly(hourly(times, temps));
    const at = (day: number): number => nights.coolHours[FIRST + day - nights.firstNight];
    // Each spell of nine readings at 9 °C lasts 8 h, and 1/11 h of each straight line between 9 and 20 °C is cool too.
    const perNight = 8 + 2 / 11;
    expect(at(24)).toBe(0);
    expect(at(25)).toBe(Math.round(perNight));
    expect(at(31)).toBe(Math.round(7 * perNight));
    expect(at(39)).toBe(Math.round(7 * perNight));
  });

  it('all or none of the hours of a cold or warm daily record', () => {
    const cold = nightsFromDaily(daily(FIRST, new Array(30).fill(-2), new Array(30).fill(9)));
    expect([cold.coolHours[19], cold.coolHours[20], cold.coolHours[29]]).toEqual([-1, 500, 500]);
    const warm = nightsFromDaily(daily(FIRST, new Array(30).fill(11), new Array(30).fill(19)));
    expect(warm.coolHours[25]).toBe(0);
  });

  it('are scaled up over at most 48 unknown hours', () => {
    expect(scaledCoolHours(226, 452)).toBe(250);
    expect(scaledCoolHours(226, 451)).toBe(-1);
    const minima = new Array<number>(40).fill(-2);
    minima[25] = minima[26] = NaN;
    const two = nightsFromDaily(daily(FIRST, minima, new Array(40).fill(9)));
    expect(two.coolHours[30]).toBe(500);
    minima[27] = NaN;
    expect(nightsFromDaily(daily(FIRST, minima, new Array(40).fill(9))).coolHours[30]).toBe(-1);
  });
});
