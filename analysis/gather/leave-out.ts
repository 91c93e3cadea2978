import { leaveOut, type LeftOutStation, type StationWinters } from '../answer/leave-out.ts';
import { leaveOutErrors } from '../answer/leave-out-errors.ts';
import { seededRandom } from '../math/seeded-random.ts';
import type { PlaceParameters } from '../place/place-parameters.ts';
import type { PackLeaveOut, PackLeaveOutDetails } from '../records/pack.ts';

/** Durations judged: the minimum itself, and four hours, what most thresholds ask for. */
const HOURS = [0, 4];
/** At most so many stations are left out, by thirds and one by one: some seconds on packs of any size. */
const MOST_BY_THIRDS = 200;
const MOST_ONE_BY_ONE = 40;
const SEED = 1985;

/** How good estimates between a pack's stations are, by leaving stations out; null where none can be judged. */
export function packLeaveOut(
  stations: readonly StationWinters[],
  parameters: PlaceParameters,
): { errors: PackLeaveOut; details: PackLeaveOutDetails } | null {
  const judge = (parts: number, most: number) => {
    const random = seededRandom(SEED);
    const judged: LeftOutStation[][] = leaveOut(stations, { hours: HOURS, parts, most, random, parameters });
    return HOURS.flatMap((hours, d) => leaveOutErrors(hours, judged[d]) ?? []);
  };
  const third = judge(3, MOST_BY_THIRDS);
  if (third.length === 0) return null;
  const one = judge(stations.length, MOST_ONE_BY_ONE);
  return {
    errors: { one: one.map(({ errors }) => errors), third: third.map(({ errors }) => errors) },
    details: { third: third.map(({ details }) => details) },
  };
}
