import { beforeAll, describe, expect, it } from 'vitest';
import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import droppedSql from '../../../analysis/records/sql/dropped-by-reason.sql?raw';
import coldestDroppedSql from '../../../analysis/records/sql/dropped-coldest.sql?raw';
import nightsSql from '../../../analysis/records/sql/nights-of-station.sql?raw';
import stationsSql from '../../../analysis/records/sql/winters-by-station.sql?raw';
import { parseIsoDay } from '../../../analysis/units/calendar.ts';
import { nightsThatHit } from '../../../web/engine/night-questions.ts';
import { nativeEngine, wasmEngine, type FilledEngine } from './both-engines.ts';
import { countHitNights, hitsByWinter } from './counting-statements.ts';
import { COMPLETE, fillStatements, madeNights, STATIONS, type MadeNight } from './made-nights.ts';

const nights = madeNights();
const GAINS = { calmC: 1.5, windyC: 0.25 };
const GAIN = { calm: 150, windy: 25, unclear: 25 };

/** Truth by a plain loop over the made nights, hundredths of °C. */
function hitsOf(station: string, hours: number, limitC: number): (MadeNight & { level: number })[] {
  const j = SUSTAINED_HOURS.indexOf(hours as 4);
  return nights.flatMap((night) => {
    const s = night.sustained[j];
    if (night.station !== station || s === null) return [];
    const level = s + GAIN[night.kind];
    return level <= Math.round(limitC * 100) ? [{ ...night, level }] : [];
  });
}

describe.each([
  ['WASM, extensions off', wasmEngine],
  ['native', nativeEngine],
])('statements about nights: %s', (_, open) => {
  let engine: FilledEngine;
  beforeAll(async () => {
    engine = await open(fillStatements(nights));
  });

  it.each([
    ['A', 4, -3],
    ["O'Hara", 0, -2.25],
    ['A', 24, 0.5],
    ["O'Hara", 8, -30],
  ])('find the hits of station %s for %i h at %f °C', async (stationId, hours, limitC) => {
    const expected = hitsOf(stationId, hours, limitC);
    const { columns, rows } = await nightsThatHit(engine, { stationId, hours, limitC, gains: GAINS });
    expect(columns).toEqual(['date', 'winter', 'kind', 'basis', 'tmin_c', 'level_c', 'spell']);
    expect(rows.map((row) => [row[0], row[1], row[2], row[5]])).toEqual(
      expected.map(({ date, winter, kind, level }) => [date, winter, kind, level / 100]),
    );
    let spell = 0;
    let before = -Infinity;
    const spells = expected.map(({ date }) => {
      const day = parseIsoDay(date)!;
      if (day - before > 3) spell++;
      before = day;
      return spell;
    });
    expect(rows.map((row) => row[6])).toEqual(spells);
  });

  it('count hits winter by winter, whole and not', async () => {
    const expected = hitsOf('A', 4, -3);
    const { columns, rows } = await hitsByWinter(engine, {
      stationId: 'A',
      hours: 4,
      limitC: -3,
      gains: GAINS,
    });
    const at = (name: string): number => columns.indexOf(name);
    expect(rows).toHaveLength(new Set(expected.map(({ winter }) => winter)).size);
    for (const row of rows) {
      const own = expected.filter(({ winter }) => winter === row[at('winter')]);
      expect(row[at('nights')]).toBe(own.length);
      expect(row[at('first_date')]).toBe(own[0].date);
      expect(row[at('last_date')]).toBe(own.at(-1)!.date);
      expect(row[at('coldest_c')]).toBe(Math.min(...own.map(({ level }) => level)) / 100);
      expect(row[at('complete')]).toBe(COMPLETE.get(row[at('winter')] as number));
    }
  });

  it('count the hits of complete winters for many limits in their order', async () => {
    const limits = [
      { hours: 4, limitC: -3 },
      { hours: 0, limitC: 1.5 },
      { hours: 24, limitC: -30 },
      { hours: 12, limitC: -2.25 },
    ];
    const expected = limits.map(
      ({ hours, limitC }) => hitsOf('A', hours, limitC).filter(({ winter }) => COMPLETE.get(winter)).length,
    );
    expect(await countHitNights(engine, 'A', limits, GAINS)).toEqual(expected);
    expect(expected[2]).toBe(0);
  });

  it('give all nights of a station in hundredths, unknown as null', async () => {
    const own = nights.filter(({ station }) => station === "O'Hara");
    const { rows, columns } = await engine.ask(nightsSql, { station: "O'Hara" });
    expect(columns.slice(-1)).toEqual(['s24_c']);
    expect(rows.map((row) => row.slice(-12))).toEqual(
      own.map(({ sustained }) => sustained.map((value) => (value === null ? null : value / 100))),
    );
    expect(rows[0][columns.indexOf('tmax_after_c')]).toBeNull();
  });

  it('tell what was dropped and what stations hold', async () => {
    const dropped = await engine.ask(droppedSql, {});
    const reasons = dropped.rows.map((row) => [
      row[dropped.columns.indexOf('reason')],
      row[dropped.columns.indexOf('count')],
    ]);
    expect(reasons).toContainEqual(['spike', 2]);
    expect(dropped.rows).toHaveLength(3);
    const coldest = await engine.ask(coldestDroppedSql, { most: 2 });
    expect(coldest.rows.map((row) => row[coldest.columns.indexOf('value_c')])).toEqual([-40, -39.5]);
    const stations = await engine.ask(stationsSql, {});
    expect(stations.rows.map((row) => [row[0], row[stations.columns.indexOf('nights')]])).toEqual(
      STATIONS.map((station) => [station, 240]),
    );
  });

  it('refuse a duration that nights are not kept for', async () => {
    expect(() => nightsThatHit(engine, { stationId: 'A', hours: 7, limitC: 0 })).toThrow(
      'Nights are kept for 0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 18, 24 hours, not for 7.',
    );
  });
});
