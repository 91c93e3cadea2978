import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { elevationGrid } from './elevation-grid.ts';
import { landMap } from './land-map.ts';
import { POSTCODES, TOWNS } from './places.ts';
import type { Planted } from './planted.ts';
import { DEMO_SPAN, stationRecords, type DemoSpan, type StationRecord } from './station-records.ts';
import { dailyText } from './write-daily.ts';
import { hourlyText } from './write-hourly.ts';

/** Title of the pack and the name of its only source: every place that shows a number shows one of them. */
export const DEMO_TITLE = 'Sallowmere Coast (invented)';

/** Paths of what was written, for the pack builder. */
export interface DemoSources {
  readonly title: string;
  /** Raw station files, daily and hourly. The order CSV among them is in °F and doesn't say so. */
  readonly files: readonly string[];
  readonly stations: string;
  readonly places: string;
  readonly land: string;
  /** Esri ASCII grid of the invented relief. */
  readonly elevation: string;
  readonly sources: string;
  readonly planted: string;
}

const SUFFIX = { dly: '.dly', long: '.csv', wide: '.access.csv', order: '.order.csv' } as const;

/**
 * Writes the invented region's raw files to a folder: `daily/` and `hourly/` station files in the formats of public
 * archives, `stations.csv`, `places.json`, `land.json`, `elevation.asc`, `sources.json`, and `planted.json` (what was put wrong on purpose).
 * The same span gives the same bytes. A folder that holds an earlier run is written over file by file.
 */
export async function writeDemoSources(folder: string, span: DemoSpan = DEMO_SPAN): Promise<DemoSources> {
  await mkdir(join(folder, 'daily'), { recursive: true });
  await mkdir(join(folder, 'hourly'), { recursive: true });
  const files: string[] = [];
  const planted: Planted[] = [];
  const stationRows = ['id,name,lat,lon,elevation_m'];
  const write = async (path: string, text: string) => {
    await writeFile(join(folder, path), text);
    return join(folder, path);
  };
  for (const record of stationRecords(span)) {
    const { station, site } = record;
    stationRows.push([station.id, station.name, station.lat, station.lon, site.elevationM].join(','));
    const { text, extra } = withDisorder(record, dailyText(record));
    files.push(await write(`daily/${station.id}${SUFFIX[station.daily]}`, text));
    planted.push(...record.planted, ...extra);
    const hourly = hourlyText(record);
    if (!hourly) continue;
    const suffix = station.hourly?.format === 'lcd' ? '.lcd.csv' : '.isd-lite.txt';
    files.push(await write(`hourly/${station.id}${suffix}`, hourly.text));
    planted.push(...hourly.planted);
  }
  return {
    title: DEMO_TITLE,
    files,
    stations: await write('stations.csv', stationRows.join('\n') + '\n'),
    places: await write('places.json', json({ invented: true, postcodes: POSTCODES, towns: TOWNS })),
    land: await write('land.json', JSON.stringify(landMap()) + '\n'),
    elevation: await write('elevation.asc', elevationGrid()),
    sources: await write('sources.json', json(sourceNote())),
    planted: await write('planted.json', json({ invented: true, ...span, planted })),
  };
}

/** The order CSV also gets two rows the wrong way round and one row twice. */
function withDisorder({ station }: StationRecord, text: string): { text: string; extra: Planted[] } {
  if (station.daily !== 'order') return { text, extra: [] };
  const rows = text.split('\n');
  const at = Math.floor(rows.length * 0.6);
  const date = (row: string) => /\d{4}-\d{2}-\d{2}/.exec(row)![0];
  [rows[at], rows[at + 1]] = [rows[at + 1], rows[at]];
  rows.splice(at + 40, 0, rows[at + 40]);
  const swapped = { kind: 'rows out of order', from: date(rows[at + 1]), to: date(rows[at]) } as const;
  const twice = { kind: 'row twice', from: date(rows[at + 40]), to: date(rows[at + 40]) } as const;
  return {
    text: rows.join('\n'),
    extra: [swapped, twice].map((entry) => ({ station: station.id, ...entry })),
  };
}

function sourceNote() {
  return {
    title: DEMO_TITLE,
    invented: true,
    sources: [
      {
        name: 'Invented weather of the Sallowmere Coast',
        licence: 'MIT, with the program',
        attribution:
          'Invented by a seeded weather generator; no reading was taken anywhere, and the place does not exist.',
      },
    ],
    notes: [
      'Every station, reading, town and postcode of this pack is invented. The coast lies in open ocean (about 31 N, 42 W).',
    ],
  };
}

function json(value: unknown): string {
  return JSON.stringify(value, null, 1) + '\n';
}
