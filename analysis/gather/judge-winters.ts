import type { PackStation } from '../records/pack.ts';
import type { LocatedStation } from '../records/station.ts';
import type { WinterTable } from '../records/winters.ts';
import { judgeCompleteness } from '../winter/completeness.ts';
import type { KnownNights } from '../winter/known-nights.ts';
import type { Hemisphere } from '../winter/winter-year.ts';
import { regionalFreezes } from './regional-freezes.ts';

/** A station whose readings were turned into nights and winters. */
export interface BuiltStation {
  readonly station: LocatedStation;
  readonly basis: PackStation['basis'];
  readonly hemisphere: Hemisphere;
  /** Winters judged from the station alone. */
  readonly winters: WinterTable;
  readonly known: KnownNights;
}

/** A station out of a finished pack, whose winters were judged when it was built. */
export interface JudgedStation {
  readonly id: string;
  readonly lat: number;
  readonly lon: number;
  readonly winters: WinterTable;
}

/**
 * The winters of all stations by id, judged again with what the neighbours show of regional freezes. `others` are
 * neighbours too; their own winters stay as they are and aren't among the result.
 */
export function judgedWithNeighbours(
  stations: readonly BuiltStation[],
  others: readonly JudgedStation[] = [],
): Map<string, WinterTable> {
  const alone = new Map([
    ...stations.map(({ station, winters }) => [station.id, winters] as const),
    ...others.map(({ id, winters }) => [id, winters] as const),
  ]);
  const freezes = regionalFreezes([...stations.map(({ station }) => station), ...others], alone);
  return new Map(
    stations.map(({ station, hemisphere, winters, known }) => [
      station.id,
      { ...winters, ...judgeCompleteness(winters.winter, hemisphere, known, freezes(station.id)) },
    ]),
  );
}
