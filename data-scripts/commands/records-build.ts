import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackManifest } from '../../analysis/records/pack.ts';
import type { TemperatureUnit } from '../../analysis/read/units-of-source.ts';
import { buildPack } from '../build/build-pack.ts';
import { GHCN_DAILY_SOURCE } from '../../analysis/archive/layout.ts';
import { buildProgress } from './build-progress.ts';
import { tell, UsageError } from './run-command.ts';

export const BUILD_HELP = `npm run records -- build --out PACK [options] FILE...

Raw station files, gzipped or not, to a record pack. A folder stands for all files in it whose format is known.

  --out PACK           folder of the pack; an old pack there is replaced once the new one is whole
  --unit F|C           unit of temperatures where a file doesn't say
  --columns MAP.json   how a table is written (see analysis/read/columns/README.md)
  --stations FILE.csv  id,name,lat,lon,elevation_m: fills what the files lack, and wins where they differ
  --places FILE        postcodes: code,name,lat,lon as CSV, GeoNames' postal layout, or a pack's places.json
                       (default: ZIP codes, where stations stand in the United States)
  --elevation FILE     elevations in degrees of latitude and longitude, m: an Esri ASCII grid (.asc, .asc.gz) or a GeoTIFF
  --sources FILE.json  licence and attribution: {"sources": [{"name", "licence", "attribution"}]}
  --title TEXT         title of the pack (default: the folder's name)
`;

/** `records build`. */
export async function recordsBuild(args: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      out: { type: 'string' },
      unit: { type: 'string' },
      columns: { type: 'string' },
      stations: { type: 'string' },
      places: { type: 'string' },
      elevation: { type: 'string' },
      sources: { type: 'string' },
      title: { type: 'string' },
    },
  });
  if (!values.out) throw new UsageError('--out is missing');
  if (positionals.length === 0) throw new UsageError('no FILE is given');
  const apart = [values.columns, values.stations, values.places, values.elevation, values.sources].flatMap(
    (file) => (file === undefined ? [] : [path.resolve(file)]),
  );
  const files = (await stationFiles(positionals)).filter((file) => !apart.includes(path.resolve(file)));
  if (files.length === 0) throw new InputError(`${positionals.join(', ')} holds no file to read`);
  const id = path.basename(path.resolve(values.out));
  const progress = buildProgress();
  try {
    await buildPack({
      out: values.out,
      files,
      found: new Set(files.filter((file) => !positionals.includes(file))),
      unit: unitOf(values.unit),
      columns: values.columns,
      stations: values.stations,
      places: values.places,
      elevation: values.elevation,
      description: {
        id,
        title: values.title ?? id,
        invented: false,
        sources:
          values.sources === undefined
            ? guessedSources(files, values.elevation)
            : await readSources(values.sources),
      },
      progress,
    });
  } finally {
    progress.stop();
  }
  tell(`${values.out} is ready.`);
}

/** Files as given, folders opened one level deep, without hidden files and the lists a fetch writes beside its records. */
async function stationFiles(given: readonly string[]): Promise<string[]> {
  const lists = await Promise.all(
    given.map(async (file) => {
      if (!(await stat(file)).isDirectory()) return [file];
      const entries = await readdir(file, { withFileTypes: true });
      return entries
        .filter(
          (entry) =>
            entry.isFile() &&
            !/^\.|^(stations\.csv|sources\.json|elevation\.asc(\.gz)?)$|\.part$/.test(entry.name),
        )
        .map((entry) => path.join(file, entry.name))
        .sort();
    }),
  );
  return lists.flat();
}

function unitOf(text: string | undefined): TemperatureUnit | null {
  if (text === undefined) return null;
  if (text === 'F' || text === 'C') return text;
  throw new InputError(`--unit "${text}" is not F or C`);
}

export async function readSources(file: string): Promise<PackManifest['sources']> {
  try {
    const { sources } = JSON.parse(await readFile(file, 'utf8')) as { sources: PackManifest['sources'] };
    if (Array.isArray(sources))
      return sources.map(({ name, licence, attribution }) => ({ name, licence, attribution }));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
  }
  throw new InputError(`${file} is not JSON with a list "sources"`);
}

/** Files of the GHCN-Daily archive are known by their names; of others only the reader can say. */
function guessedSources(files: readonly string[], elevation: string | undefined): PackManifest['sources'] {
  const archive = files.filter((file) => /^[A-Z]{2}[A-Z0-9]{9}[._-]/.test(path.basename(file)));
  const unknown = {
    name: 'Station files given to the build',
    licence: 'not stated: ask the publisher before passing the pack on',
    attribution: 'Publisher not stated',
  };
  return [
    ...(archive.length > 0 ? [GHCN_DAILY_SOURCE] : []),
    ...(archive.length < files.length ? [unknown] : []),
    ...(elevation === undefined
      ? []
      : [{ ...unknown, name: `Elevations: the file ${path.basename(elevation)} given to the build` }]),
  ];
}
