import { leaveOut, type LeftOutStation } from '../../analysis/answer/leave-out.ts';
import { leaveOutErrors } from '../../analysis/answer/leave-out-errors.ts';
import { seededRandom } from '../../analysis/math/seeded-random.ts';
import { fitPlaceParameters } from '../../analysis/place/fit-parameters.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackLeaveOutErrors } from '../../analysis/records/pack.ts';
import { Pack } from '../pack/open-pack.ts';
import { shapeSpread } from './shape-spread.ts';

const USAGE = 'usage: places SPLITS PACK [PACK ...]';
const HOURS = [0, 4];

/**
 * Errors of place histories with a third of the stations left out, over several ways to deal the stations out, the
 * covariances fitted anew to the stations kept each time.
 */
async function places(splits: number, folders: readonly string[]): Promise<void> {
  console.log(
    '| network | h | judged | nearest | inverse distance | ours | of inverse distance | bias | interval: coverage, width, score | same winters: error, coverage, width, score | hit ratio |',
  );
  console.log('|---|---|---|---|---|---|---|---|---|---|---|');
  for (const folder of folders) {
    const pack = await Pack.open(folder);
    const all = await Promise.all(
      pack.stations.map(async (station) => ({ station, winters: await pack.winters(station) })),
    );
    const judged: LeftOutStation[][] = HOURS.map(() => []);
    for (let split = 1; split <= splits; split++) {
      const found = leaveOut(all, {
        hours: HOURS,
        parts: 3,
        most: Infinity,
        random: seededRandom(split),
        parameters: fitPlaceParameters,
      });
      found.forEach((stations, d) => judged[d].push(...stations));
    }
    HOURS.forEach((hours, d) => {
      const found = leaveOutErrors(hours, judged[d]);
      console.log(found ? row(pack.manifest.id, found.errors) : `| ${pack.manifest.id} | ${hours} | 0 |`);
    });
  }
}

/** How far the shapes of neighbouring stations differ. */
async function shapes(folders: readonly string[]): Promise<void> {
  console.log('\n| network | h | groups | heterogeneity of L-skewness | spread of k | discordant |');
  console.log('|---|---|---|---|---|---|');
  for (const folder of folders) {
    const pack = await Pack.open(folder);
    for (const hours of HOURS) {
      const found = await shapeSpread(pack, hours);
      if (!found) continue;
      const { groups, h, spread, discordant } = found;
      console.log(
        `| ${pack.manifest.id} | ${hours} | ${groups} | ${h.toFixed(2)} | ${spread.toFixed(3)} | ${(100 * discordant).toFixed(1)} % |`,
      );
    }
  }
}

function row(id: string, errors: PackLeaveOutErrors): string {
  const { hours, stations, nearest_mean_error_c: nearest, inverse_distance_mean_error_c: inverse } = errors;
  const { mean_error_c: ours, bias_c: bias, interval, same_winters: same, hit_ratio: ratio } = errors;
  const cells = [
    id,
    hours,
    stations,
    nearest.toFixed(2),
    inverse.toFixed(2),
    ours.toFixed(2),
    (ours / inverse).toFixed(2),
    bias.toFixed(2),
    `${interval.coverage.toFixed(2)}, ${interval.mean_width_c.toFixed(2)}, ${interval.score_c.toFixed(2)}`,
    `${same.mean_error_c.toFixed(2)}, ${same.coverage.toFixed(2)}, ${same.mean_width_c.toFixed(2)}, ${same.score_c.toFixed(2)}`,
    ratio?.toFixed(3) ?? '',
  ];
  return `| ${cells.join(' | ')} |`;
}

const [splits, ...folders] = process.argv.slice(2);
if (!(Number(splits) >= 1) || folders.length === 0) {
  console.error(USAGE);
  process.exitCode = 2;
} else {
  const tables = async () => {
    await places(Number(splits), folders);
    await shapes(folders);
  };
  await tables().catch((error: unknown) => {
    if (!(error instanceof InputError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  });
}
