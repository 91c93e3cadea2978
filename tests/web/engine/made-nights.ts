import { SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import { dayNumber, formatIsoDay } from '../../../analysis/units/calendar.ts';
import { uniform } from '../workers/made-pack.ts';

/** A night as plain numbers, the truth that statements are checked against. Hundredths of °C. */
export interface MadeNight {
  readonly station: string;
  readonly date: string;
  readonly winter: number;
  readonly kind: 'calm' | 'windy' | 'unclear';
  readonly sustained: readonly (number | null)[];
  readonly coolHours: number | null;
}

export const STATIONS = ['A', "O'Hara"];
export const COMPLETE = new Map([
  [1985, true],
  [1986, false],
  [1987, true],
]);

/** Three winters of 80 nights at two stations, levels in quarters of a degree so that limits are met exactly. */
export function madeNights(): MadeNight[] {
  const random = uniform(41);
  const kinds = ['calm', 'windy', 'unclear'] as const;
  return STATIONS.flatMap((station) =>
    [...COMPLETE.keys()].flatMap((winter) =>
      Array.from({ length: 80 }, (_, i) => {
        const lowest = Math.round(random() * 40 - 24) * 25;
        return {
          station,
          winter,
          date: formatIsoDay(dayNumber(winter - 1, 12, 1) + i),
          kind: kinds[Math.floor(random() * 3)],
          sustained: SUSTAINED_HOURS.map((hours) =>
            hours > 12 && i % 11 === 0 ? null : lowest + 25 * Math.round(hours / 2),
          ),
          coolHours: i % 7 === 0 ? null : 5 * i,
        };
      }),
    ),
  );
}

/** SQL that fills the tables of schema.sql. */
export function fillStatements(nights: readonly MadeNight[]): string[] {
  const text = (value: string): string => `'${value.replaceAll("'", "''")}'`;
  const degrees = (value: number | null): string => (value === null ? 'null' : (value / 100).toFixed(2));
  const rows = nights.map(
    ({ station, date, winter, kind, sustained, coolHours }) =>
      `(${text(station)}, ${text(date)}, ${winter}, '${kind}', 'daily', ${degrees(sustained[0])}, 12.5, null, ${sustained.map(degrees).join(', ')}, ${coolHours ?? 'null'})`,
  );
  const winters = STATIONS.flatMap((station) =>
    [...COMPLETE].map(
      ([winter, complete]) => `(${text(station)}, ${winter}, ${complete}, '${complete ? '' : 'gap'}')`,
    ),
  );
  const stations = STATIONS.map(
    (station) => `(${text(station)}, 'Name', 31.0, -42.0, 12.0, null, 'daily', 2, 1985, 1987)`,
  );
  return [
    `insert into nights values ${rows.join(', ')}`,
    `insert into winters values ${winters.join(', ')}`,
    `insert into stations values ${stations.join(', ')}`,
    `insert into dropped values
       ('A', '1985-01-03', 'tmin', -40.0, 'dropped', 'spike', 'far below both neighbours'),
       ('A', '1986-01-03', 'tmin', -39.5, 'dropped', 'spike', 'far below both neighbours'),
       ('O''Hara', '1987-02-01', 'tmax', 60.0, 'dropped', 'source flag', 'flag X'),
       ('O''Hara', '1987-02-02', 'tmin', -1.1, 'doubtful', 'morning reader', 'read at 7')`,
  ];
}
