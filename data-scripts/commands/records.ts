import { parseArgs } from 'node:util';
import { nightsCsv } from '../pack/nights-csv.ts';
import { writePackIndex } from '../pack/pack-index.ts';
import { BUILD_HELP, recordsBuild } from './records-build.ts';
import { CHECK_HELP, recordsCheck } from './records-check.ts';
import { DEMO_HELP, recordsDemo } from './records-demo.ts';
import { point } from './assess-options.ts';
import { FETCH_HELP, recordsFetch } from './records-fetch.ts';
import { print, runCommand, UsageError } from './run-command.ts';

const INDEX_HELP = `npm run records -- index DIR

Writes DIR/index.json, the list of the packs in a folder that a page reads first.
`;
const NIGHTS_HELP = `npm run records -- nights PACK (--station ID | --at LAT,LON[,ELEV_M])

All nights of a station with a minimum at or below 10 °C, as CSV: kind of night, basis, extremes, sustained cold (°C).
At a point between stations they are estimated, and say so in the column basis.
`;

const COMMANDS: Record<string, { help: string; run: (args: string[]) => Promise<void> }> = {
  build: { help: BUILD_HELP, run: recordsBuild },
  fetch: { help: FETCH_HELP, run: recordsFetch },
  demo: { help: DEMO_HELP, run: recordsDemo },
  check: { help: CHECK_HELP, run: recordsCheck },
  index: { help: INDEX_HELP, run: recordsIndex },
  nights: { help: NIGHTS_HELP, run: recordsNights },
};

await runCommand('records', async () => {
  const [name, ...args] = process.argv.slice(2);
  if (name === undefined || name === '--help') {
    return print(
      Object.values(COMMANDS)
        .map(({ help }) => help)
        .join('\n'),
    );
  }
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!command) throw new UsageError(`"${name}" is not one of ${Object.keys(COMMANDS).join(', ')}`);
  if (args.includes('--help')) return print(command.help);
  return command.run(args);
});

async function recordsIndex(args: string[]): Promise<void> {
  const { positionals } = parseArgs({ args, allowPositionals: true });
  if (positionals.length !== 1) throw new UsageError('exactly one DIR is needed');
  const entries = await writePackIndex(positionals[0]);
  await print(entries.map(({ id, title, stations }) => `${id}: ${title}, ${stations} stations\n`).join(''));
}

async function recordsNights(args: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { station: { type: 'string' }, at: { type: 'string' } },
  });
  const { station, at } = values;
  if (positionals.length !== 1 || (station === undefined) === (at === undefined))
    throw new UsageError('exactly one PACK and one of --station and --at are needed');
  const place =
    at === undefined
      ? { by: 'station' as const, id: station! }
      : { by: 'point' as const, label: at, ...point(at) };
  await print(await nightsCsv(positionals[0], place));
}
