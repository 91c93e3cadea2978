import { expect, it } from 'vitest';
import {
  judgedWithNeighbours,
  type BuiltStation,
  type JudgedStation,
} from '../../../analysis/gather/judge-winters.ts';
import { dayNumber } from '../../../analysis/units/calendar.ts';
import type { KnownNights } from '../../../analysis/winter/known-nights.ts';
import { inventedWinters } from '../answer/invented-winters.ts';

const FREEZE = dayNumber(1989, 12, 23);
const made = inventedWinters(1, -4);
/** The winter 1989-90, coldest on 23 December. */
const winters = {
  ...made,
  winter: Int16Array.of(1990),
  coldestDay: made.coldestDay.map((durations) => durations.map(() => Int32Array.of(FREEZE))),
};

/** A station at 31 N that knows every night, but for one if told. */
function built(id: string, missing: number | null): BuiltStation {
  const station = { id, name: id, lat: 31, lon: -42, elevationM: 5 };
  const known = { has: (night: number) => night !== missing } as unknown as KnownNights;
  return { station, basis: 'daily', hemisphere: 'north', winters, known };
}
const judged = (km: number): JudgedStation[] =>
  [1, 2, 3].map((at) => ({ id: `ZZ${at}`, lat: 31 + km / 111.195, lon: -42, winters }));

it('takes a winter for not complete that lacks the night of a freeze at the stations of the pack it joins', () => {
  const verdict = (station: BuiltStation, others: JudgedStation[]) => {
    const all = judgedWithNeighbours([station], others);
    expect([...all.keys()]).toEqual([station.station.id]);
    const { complete, reason } = all.get(station.station.id)!;
    return [complete[0], reason[0]];
  };
  const sentence = 'misses 1989-12-23, the coldest night at 3 of 3 neighbours';
  expect(verdict(built('own', FREEZE), judged(50))).toEqual([0, sentence]);
  expect(verdict(built('own', FREEZE + 1), judged(50))).toEqual([1, '']);
  // Beyond 200 km no station is a neighbour; two show nothing.
  expect(verdict(built('own', FREEZE), judged(250))).toEqual([1, '']);
  expect(verdict(built('own', FREEZE), judged(50).slice(1))).toEqual([1, '']);
});
