import { beforeAll, describe, expect, it } from 'vitest';
import type { NightPlan } from '../../../analysis/place/night-plan.ts';
import { placeNights } from '../../../analysis/place/place-nights.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { COOL_HOURS_UNKNOWN, MISSING_HUNDREDTHS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import { formatIsoDay, parseIsoDay } from '../../../analysis/units/calendar.ts';
import {
  countHitNights as countHere,
  hitsByWinter as byWinterHere,
} from '../../../analysis/winter/hit-nights.ts';
import { nightsThatHit } from '../../../web/engine/night-questions.ts';
import {
  estimatedNightsThatHit,
  keptNightsOf,
  nightsOfPlace,
} from '../../../web/engine/place-night-questions.ts';
import { wintersOfNights } from '../../analysis/place/invented-nights.ts';
import { nativeEngine, wasmEngine, type FilledEngine } from './both-engines.ts';
import { countHitNights, hitsByWinter } from './counting-statements.ts';
import { COMPLETE, fillStatements, madeNights, STATIONS } from './made-nights.ts';

const made = madeNights();
const GAINS = { calmC: 1.5, windyC: 0.25 };
const WINTERS = {
  winter: Int16Array.from(COMPLETE.keys()),
  complete: Uint8Array.from(COMPLETE.values(), Number),
};
const ASKED = [
  ['A', 4, -3],
  ["O'Hara", 0, -2.25],
  ['A', 24, 0.5],
  ['A', 8, -30],
] as const;

/** The two made stations tell of a point between them, whose winters are a degree colder than those of the first. */
function planBetween(first: KeptNights): NightPlan {
  const own = wintersOfNights(first, COMPLETE.size, [], WINTERS.winter[0]);
  const colder = (level: number): number => (level === MISSING_HUNDREDTHS ? level : level - 100);
  const means = SUSTAINED_HOURS.map((hours) => -5 + hours / 8);
  return {
    stationIds: STATIONS,
    stationMeansC: STATIONS.map(() => Float64Array.from(means)),
    meansC: Float64Array.from(means, (mean) => mean - 1),
    hemisphere: 'north',
    winters: { ...own, coldest: own.coldest.map((kind) => kind.map((levels) => levels.map(colder))) },
    sources: [...COMPLETE.keys()].map(() => ({ stations: [0, 1], parts: [0.6, 0.4] })),
  };
}

describe.each([
  ['WASM, extensions off', wasmEngine],
  ['native', nativeEngine],
])('nights in arrays: %s', (_, open) => {
  let engine: FilledEngine;
  beforeAll(async () => {
    engine = await open(fillStatements(made));
  });

  it('are the nights of the database, unknown levels marked', async () => {
    const own = made.filter(({ station }) => station === "O'Hara");
    const { day, winter, sustained } = await keptNightsOf(engine, "O'Hara");
    expect([...day]).toEqual(own.map(({ date }) => parseIsoDay(date)));
    expect([...winter]).toEqual(own.map((night) => night.winter));
    expect(sustained.map((levels) => [...levels])).toEqual(
      SUSTAINED_HOURS.map((__, j) => own.map((night) => night.sustained[j] ?? MISSING_HUNDREDTHS)),
    );
    expect(sustained[11].includes(MISSING_HUNDREDTHS)).toBe(true);
  });

  // What counts a point's nights must count as the statements do at a station.
  it.each(ASKED)('hit as the statements say: station %s, %i h, %f °C', async (stationId, hours, limitC) => {
    const nights = await keptNightsOf(engine, stationId);
    const limit = { hours, limitC, gains: GAINS };
    const hits = await nightsThatHit(engine, { stationId, ...limit });
    const here = estimatedNightsThatHit(nights, limit);
    expect(here.columns).toEqual(hits.columns);
    const basis = hits.columns.indexOf('basis');
    expect(here.rows).toEqual(hits.rows.map((row) => row.with(basis, 'estimated')));

    const byWinter = await hitsByWinter(engine, { stationId, ...limit });
    expect(
      byWinterHere(nights, WINTERS, limit).map((own) => [
        own.winter,
        own.nights,
        own.spells,
        formatIsoDay(own.firstDay),
        formatIsoDay(own.lastDay),
        own.coldestC,
        own.complete,
      ]),
    ).toEqual(byWinter.rows);
    expect([countHere(nights, WINTERS, limit)]).toEqual(
      await countHitNights(engine, stationId, [{ hours, limitC }], GAINS),
    );
  });

  it('make the same nights of a point', async () => {
    const nights = await nightsOfPlace(engine, planBetween(await keptNightsOf(engine, STATIONS[0])));
    expect(nights.day.length).toBeGreaterThan(200);
    const expected = placeNights(planBetween(madeArrays(STATIONS[0])), STATIONS.map(madeArrays));
    expect(nights).toEqual(expected);
  });
});

/** The made nights in arrays, as no engine has seen them. */
function madeArrays(station: string): KeptNights {
  const own = made.filter((night) => night.station === station);
  return {
    day: Int32Array.from(own, ({ date }) => parseIsoDay(date)!),
    winter: Int16Array.from(own, ({ winter }) => winter),
    kind: Uint8Array.from(own, ({ kind }) => ['calm', 'windy', 'unclear'].indexOf(kind)),
    sustained: SUSTAINED_HOURS.map((_, j) =>
      Int16Array.from(own, ({ sustained }) => sustained[j] ?? MISSING_HUNDREDTHS),
    ),
    coolHours: Int16Array.from(own, ({ coolHours }) => coolHours ?? COOL_HOURS_UNKNOWN),
  };
}
