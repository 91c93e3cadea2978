import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import type { FeatureCollection } from 'geojson';
import { buildPack } from '../build/build-pack.ts';
import { writeDemoSources } from '../demo/write-demo-sources.ts';
import { buildProgress } from './build-progress.ts';
import { readSources } from './records-build.ts';
import { tell, UsageError } from './run-command.ts';

export const DEMO_HELP = `npm run records -- demo --out PACK [--raw DIR]

The invented demo region: writes its raw station files and builds them into a pack. The same every time.

  --out PACK  folder of the pack
  --raw DIR   keep the raw station files here
`;

/** `records demo`. */
export async function recordsDemo(args: string[]): Promise<void> {
  const { values } = parseArgs({ args, options: { out: { type: 'string' }, raw: { type: 'string' } } });
  if (!values.out) throw new UsageError('--out is missing');
  const work = values.raw ?? (await mkdtemp(path.join(tmpdir(), 'citrus-winters-demo-')));
  const progress = buildProgress();
  try {
    const demo = await writeDemoSources(work);
    await buildPack({
      out: values.out,
      files: demo.files,
      unit: 'F',
      stations: demo.stations,
      places: demo.places,
      elevation: demo.elevation,
      land: JSON.parse(await readFile(demo.land, 'utf8')) as FeatureCollection,
      description: {
        id: path.basename(path.resolve(values.out)),
        title: demo.title,
        invented: true,
        sources: await readSources(demo.sources),
      },
      progress,
    });
  } finally {
    progress.stop();
    if (values.raw === undefined) await rm(work, { recursive: true, force: true });
  }
  tell(`${values.out} is ready.`);
}
