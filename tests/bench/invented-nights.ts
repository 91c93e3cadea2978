import { DuckDBInstance } from '@duckdb/node-api';
import schemaSql from '../../analysis/records/sql/schema.sql?raw';
import type { PackStation } from '../../analysis/records/pack.ts';

/** Stations whose nights are made and put in order at a time. */
const AT_ONCE = 100;

/** Durations after the minimum, each some tenths of a degree warmer than the one before. */
const LEVELS = ['s1', 's2', 's3', 's4', 's5', 's6', 's8', 's10', 's12', 's18', 's24'];

/**
 * Nights of the stations `$first` to `$last` (by row): minima around a yearly wave, about 130 nights a year at or below 10 °C, the
 * share that public stations of a coast with citrus have. All invented, and of use for nothing but their number.
 */
const NIGHTS = `
insert into nights
with days as (
  select station, unnest(generate_series(make_date(first_winter - 1, 7, 1), make_date(last_winter, 6, 30), interval 1 day))::date as date
  from stations where rowid between $first and $last
),
minima as (
  select *, round(17 - 14 * cos(2 * pi() * (dayofyear(date) - 20) / 365) + 9 * (random() + random() + random() - 1.5), 1) as s0
  from days
),
cold as (select *, random() as pace from minima where s0 <= 10),
levels as (
  select *, ${LEVELS.map((name, i) => `s0 + ${0.25 * (i + 1)} * pace * (1 + 0.2 * random()) as ${name}`).join(', ')}
  from cold
)
select station, date, year(date) + (month(date) >= 7)::int,
  case when pace < 0.6 then 'calm' when pace < 0.9 then 'windy' else 'unclear' end, 'estimated',
  s0, s0 + 6 + round(9 * random(), 1), s0 + 6 + round(9 * random(), 1),
  s0, ${LEVELS.join(', ')}, (500 * random())::smallint
from levels order by station, date`;

/** Writes a database of invented nights for these stations, laid out as `records build` does. */
export async function writeInventedNights(file: string, stations: readonly PackStation[]): Promise<void> {
  const instance = await DuckDBInstance.create(':memory:', { threads: '1' });
  const connection = await instance.connect();
  try {
    await connection.run(`attach '${file}' as pack (storage_version 'v1.0.0', block_size 16384)`);
    await connection.run('use pack');
    await connection.run(schemaSql);
    const appender = await connection.createAppender('stations');
    for (const { id, name, lat, lon, winters } of stations) {
      appender.appendVarchar(id);
      appender.appendVarchar(name);
      appender.appendDouble(lat);
      appender.appendDouble(lon);
      appender.appendNull();
      appender.appendNull();
      appender.appendVarchar('daily');
      appender.appendInteger(winters.complete);
      appender.appendInteger(winters.first!);
      appender.appendInteger(winters.last!);
      appender.endRow();
    }
    appender.closeSync();
    await connection.run('select setseed(0.5)');
    for (let first = 0; first < stations.length; first += AT_ONCE)
      await connection.run(NIGHTS, { first, last: first + AT_ONCE - 1 });
    await connection.run(
      `insert into winters select station, unnest(range(first_winter, last_winter + 1)), true, '' from stations`,
    );
    await connection.run('checkpoint pack');
    await connection.run('use memory');
    await connection.run('detach pack');
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}
