import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';

/** A public reference series as the fits want it: negated minima with the winter or year of each. */
export interface PublicSeries {
  readonly winters: number[];
  readonly values: number[];
}

const folder = join(
  process.env.REAL_DATA ?? join(process.cwd(), '..', 'shared', 'real-data'),
  'reference-series',
);

/** Whether the public series are at hand; says why not, once, when they aren't. */
export const havePublicSeries = existsSync(folder);
if (!havePublicSeries)
  console.log(
    `Skipping checks on public series: no folder ${folder} (set REAL_DATA to the folder above it).`,
  );

/** Reads the four series named in PROVENANCE.md (the same rules as real-series.py). */
export function publicSeries(): Record<'port_jervis' | 'phoenix' | 'fort_collins' | 'denver', PublicSeries> {
  return {
    port_jervis: yearly('port_jervis_winter_1927-1995.csv', 'TMN0'),
    phoenix: yearly('phoenix_summer_max_min_1948-1990.csv', 'Tmin'),
    fort_collins: winters('fort_collins_1900-1999.csv.gz', 'Mn', 'MnT', 1901, 1999),
    denver: winters('denver_daily_min_1949-1999.csv.gz', 'Mon', 'Min', 1950, 1999),
  };
}

function rows(name: string): Record<string, string>[] {
  const bytes = readFileSync(join(folder, name));
  const text = (name.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString();
  const [head, ...lines] = text.trim().split(/\r?\n/);
  const columns = head!.split(',').map((column) => column.replaceAll('"', ''));
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? '']));
  });
}

function yearly(name: string, column: string): PublicSeries {
  const table = rows(name);
  return { winters: table.map((row) => Number(row.Year)), values: table.map((row) => -Number(row[column])) };
}

function winters(name: string, month: string, column: string, first: number, last: number): PublicSeries {
  const coldest = new Map<number, number>();
  for (const row of rows(name)) {
    if (row[column] === '' || row[column] === 'NA') continue;
    const winter = Number(row.Year) + (Number(row[month]) >= 7 ? 1 : 0);
    coldest.set(winter, Math.min(coldest.get(winter) ?? Infinity, Number(row[column])));
  }
  const labels = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  return { winters: labels, values: labels.map((winter) => -coldest.get(winter)!) };
}
