import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../../analysis/extremes/wilson.ts';
import { CITRUS_TYPES, findType } from '../../../analysis/tree/catalogue.ts';
import { fruitLoss } from '../../../analysis/tree/fruit-loss.ts';
import { bearsAllYear, HARVEST_CALENDARS, harvestWindow } from '../../../analysis/tree/harvest.ts';
import { seasonDayOfDate, seasonDayText } from '../../../analysis/winter/season-day.ts';
import type { Hemisphere } from '../../../analysis/winter/winter-year.ts';

const satsuma = findType('satsuma_owari')!;
const navel = findType('navel_orange')!;
const on = (month: number, day: number) => seasonDayOfDate(month, day, 'north');
const first = (nights: readonly number[], winters: number) =>
  Float64Array.from({ length: winters }, (_, w) => nights[w] ?? NaN);
const gulf = (type: typeof satsuma, hemisphere: Hemisphere = 'north') =>
  harvestWindow(type, 'gulf', hemisphere);
const text = (day: number) => seasonDayText(day, 'north');

describe('the crop against the first night that takes fruit', () => {
  // Owari satsuma on the Gulf coast: October to December. Twenty winters, first such nights as in a table by hand.
  const nights = [on(11, 20), on(12, 3), on(12, 3), on(12, 20), on(1, 5), on(2, 2)];

  it('is counted by half-month, as reckoned by hand', () => {
    const { halves } = fruitLoss(first(nights, 20), satsuma, gulf(satsuma), 'north');
    expect(halves.map((half) => [text(half.fromDay), text(half.toDay), half.lost])).toEqual([
      ['10-01', '10-15', 0],
      ['10-16', '10-31', 0],
      ['11-01', '11-15', 0],
      ['11-16', '11-30', 0.05],
      ['12-01', '12-15', 0.15],
      ['12-16', '12-31', 0.2],
    ]);
    // Wilson's 90 % interval of 3 of 20 by hand: z = 1.6449, centre (0.15 + z²/40)/(1 + z²/20) = 0.1917,
    // half width z/(1.1353)·√(0.15·0.85/20 + z²/1600) = 0.1305.
    expect(halves[4].low).toBeCloseTo(0.061, 2);
    expect(halves[4].high).toBeCloseTo(0.322, 2);
    expect(halves[4]).toMatchObject(wilsonInterval(3, 20));
  });

  it('is to be picked the day before 1 winter in 10 has taken it, however many nights fall on that day', () => {
    const loss = fruitLoss(first(nights, 20), satsuma, gulf(satsuma), 'north');
    // The second of twenty winters comes on 3 December.
    expect(text(loss.pickBy!)).toBe('12-02');
    expect(loss.byPickBy!.lost).toBe(0.05);
    expect(loss.beforeRipe).toBe(0);
    expect(loss.beforeEnd).toBe(0.2);
    expect(loss.safeToTheEnd).toBe(false);
  });

  it('may hang to the end where fewer than 1 winter in 10 takes it before', () => {
    const loss = fruitLoss(first([on(12, 24), on(1, 4), on(1, 5)], 20), satsuma, gulf(satsuma), 'north');
    expect(loss).toMatchObject({ safeToTheEnd: true, beforeEnd: 0.05 });
    expect(text(loss.pickBy!)).toBe('12-31');
  });

  it('has no day to pick by where it is lost before it is ripe', () => {
    const murcott = findType('murcott_tangor')!;
    const loss = fruitLoss(first([on(12, 1), on(12, 9)], 20), murcott, gulf(murcott), 'north');
    expect(loss).toMatchObject({ beforeRipe: 0.1, pickBy: null, byPickBy: null, safeToTheEnd: false });
  });

  it('hangs through the cold before it ripens in summer: Valencia in California', () => {
    const valencia = findType('valencia_orange')!;
    const window = harvestWindow(valencia, 'california', 'north');
    expect(window.alwaysExposed).toBe(true);
    const lost = fruitLoss(first([on(12, 20), on(1, 4), on(2, 1)], 20), valencia, window, 'north');
    expect(lost).toMatchObject({ beforeRipe: 0.15, beforeEnd: 0.15, pickBy: null });
    expect(lost.halves.map(({ fromDay }) => text(fromDay))).toEqual([
      ...['10-01', '10-16', '11-01', '11-16', '12-01', '12-16', '01-01', '01-16'],
      ...['02-01', '02-16', '03-01', '03-16', '04-01', '04-16'],
    ]);
    const safe = fruitLoss(first([on(1, 4)], 20), valencia, window, 'north');
    expect(safe).toMatchObject({ beforeRipe: 0.05, safeToTheEnd: true, byPickBy: { lost: 0.05 } });
    expect(text(safe.pickBy!)).toBe('10-31');
  });

  it('ripens all year on lemons: what is ripe is picked before the cold', () => {
    const lemon = findType('eureka_lemon')!;
    const window = harvestWindow(lemon, 'california', 'north');
    const loss = fruitLoss(first([on(12, 20), on(1, 4), on(2, 1)], 20), lemon, window, 'north');
    expect(loss).toMatchObject({ beforeRipe: null, beforeEnd: 0.15, safeToTheEnd: false });
    expect(text(loss.pickBy!)).toBe('01-03');
    // Key lime on the Gulf coast ends in November, before that.
    const lime = findType('mexican_lime')!;
    const early = fruitLoss(first([on(12, 20), on(1, 4), on(2, 1)], 20), lime, gulf(lime), 'north');
    expect(text(early.pickBy!)).toBe('11-30');
    expect(early.safeToTheEnd).toBe(false);
  });

  it('south of the equator half a year later, and nothing without a winter', () => {
    const { halves } = fruitLoss(first([], 10), navel, gulf(navel, 'south'), 'south');
    expect(seasonDayText(halves[0].fromDay, 'south')).toBe('04-01');
    expect(seasonDayText(halves.at(-1)!.toDay, 'south')).toBe('07-31');
    expect(fruitLoss(first([], 0), navel, gulf(navel), 'north')).toMatchObject({
      halves: [],
      beforeEnd: null,
      pickBy: null,
      safeToTheEnd: false,
    });
  });
});

describe('properties of lost crops', () => {
  const anyFirst = fc.array(fc.option(fc.integer({ min: 80, max: 310 }), { nil: NaN }), {
    minLength: 1,
    maxLength: 40,
  });
  const question = fc.record({
    type: fc.constantFrom(...CITRUS_TYPES),
    calendar: fc.constantFrom(...HARVEST_CALENDARS),
    hemisphere: fc.constantFrom<Hemisphere>('north', 'south'),
    values: anyFirst,
  });

  it('shares rise with the date, and the day to pick by keeps the loss under 1 in 10 as late as it can', () => {
    fc.assert(
      fc.property(question, ({ type, calendar, hemisphere, values }) => {
        const window = harvestWindow(type, calendar, hemisphere);
        const days = Float64Array.from(values);
        const loss = fruitLoss(days, type, window, hemisphere);
        const by = (day: number) => values.filter((value) => value <= day).length / values.length;
        let before = 0;
        for (const { lost, low, high, fromDay, toDay } of loss.halves) {
          expect(lost).toBeGreaterThanOrEqual(before);
          expect(low).toBeLessThanOrEqual(lost);
          expect(high).toBeGreaterThanOrEqual(lost);
          expect(toDay - fromDay).toBeGreaterThanOrEqual(13);
          expect(toDay - fromDay).toBeLessThanOrEqual(15);
          before = lost;
        }
        expect(loss.halves.length).toBeGreaterThan(0);
        expect(loss.safeToTheEnd).toBe(loss.beforeEnd! < 0.1);
        if (loss.safeToTheEnd) return;
        if (loss.pickBy === null) {
          const ripe = bearsAllYear(type, window) && window.toDay < window.fromDay ? 0 : window.fromDay;
          expect(by(ripe)).toBeGreaterThanOrEqual(0.1);
          return;
        }
        expect(by(loss.pickBy)).toBeLessThan(0.1);
        if (loss.pickBy !== window.toDay && loss.pickBy !== 365)
          expect(by(loss.pickBy + 1)).toBeGreaterThanOrEqual(0.1);
      }),
    );
  });

  it('nights that come later, or not at all, never lose more nor call for picking earlier', () => {
    fc.assert(
      fc.property(question, fc.integer({ min: 0, max: 40 }), (asked, later) => {
        const { type, calendar, hemisphere, values } = asked;
        const window = harvestWindow(type, calendar, hemisphere);
        const of = (days: readonly number[]) => fruitLoss(Float64Array.from(days), type, window, hemisphere);
        const [soon, late] = [of(values), of(values.map((day) => day + later))];
        late.halves.forEach(({ lost }, h) => expect(lost).toBeLessThanOrEqual(soon.halves[h].lost));
        if (soon.pickBy !== null && !late.safeToTheEnd)
          expect(late.pickBy).toBeGreaterThanOrEqual(soon.pickBy);
        if (soon.safeToTheEnd) expect(late.safeToTheEnd).toBe(true);
      }),
    );
  });
});
