import { parseArgs } from 'node:util';
import { DEFAULT_ARCHIVE } from '../../analysis/archive/layout.ts';
import { consoleProgress } from '../fetch/console-progress.ts';
import { fetchArchive } from '../fetch/fetch-archive.ts';
import { DEFAULT_TILES } from '../fetch/terrain-tiles.ts';
import { point } from './assess-options.ts';
import { print, tell, UsageError } from './run-command.ts';

export const FETCH_HELP = `npm run records -- fetch --near LAT,LON --km N --out DIR [options]

Downloads the records of GHCN-Daily stations around a point. Run again after an interruption, it goes on where it was.

  --near LAT,LON   the point, degrees north and east
  --km N           greatest distance of a station
  --out DIR        folder for the records, stations.csv and sources.json
  --archive URL    a mirror (default: ${DEFAULT_ARCHIVE})
  --most N         most stations (default: 25)
  --min-years N    fewest years with minima and maxima (default: 20)
  --elevation      open elevation tiles around the stations too, as a grid that build reads by --elevation
  --tiles URL      a mirror of the tiles, Terrarium encoding, Z/X/Y.png (default: ${DEFAULT_TILES})
`;

/** `records fetch`. */
export async function recordsFetch(args: string[]): Promise<void> {
  const { values } = parseArgs({
    args,
    options: {
      near: { type: 'string' },
      km: { type: 'string' },
      out: { type: 'string' },
      archive: { type: 'string' },
      most: { type: 'string' },
      'min-years': { type: 'string' },
      elevation: { type: 'boolean' },
      tiles: { type: 'string' },
    },
  });
  const { near, km, out } = values;
  if (!near || !km || !out) throw new UsageError('--near, --km and --out are needed');
  const stop = new AbortController();
  const interrupt = () => stop.abort();
  process.once('SIGINT', interrupt);
  const progress = consoleProgress(process.stderr);
  try {
    const report = await fetchArchive(
      {
        near: point(near, '--near'),
        km: Number(km),
        out,
        archive: values.archive,
        elevation: values.elevation,
        tiles: values.tiles,
        most: numberOf(values.most),
        minYears: numberOf(values['min-years']),
        signal: stop.signal,
      },
      progress.event,
    );
    const rows = report.stations.map(({ id, tminDays }) => `${id},${tminDays}\n`);
    await print(`id,days_with_minimum\n${rows.join('')}`);
    const elevation = report.elevation === null ? '' : ` --elevation ${report.elevation}`;
    tell(
      `Next: npm run records -- build --out PACK --stations ${out}/stations.csv --sources ${out}/sources.json${elevation} ${out}`,
    );
  } finally {
    progress.stop();
    process.off('SIGINT', interrupt);
  }
}

function numberOf(text: string | undefined): number | undefined {
  return text === undefined ? undefined : Number(text);
}
