import { stationSkewness, type StationSkewness } from '../extremes/pooled-shape.ts';
import type { WinterTable } from '../records/winters.ts';
import { winterMinima, type Gains } from '../winter/winter-minima.ts';
import { completeValuesC } from './winter-values.ts';

/** Kept of one station; more only come by trying hundreds of covers, and are then made again. */
const MOST_KEPT = 500;

/** A station is a neighbour of many places, and of every cell around it. */
const kept = new WeakMap<WinterTable, Map<string, StationSkewness | null>>();

/** What a neighbouring station says of the shape for a number of hours and gains; null where it has too few winters. */
export function neighbourSkewness(winters: WinterTable, hours: number, gains: Gains): StationSkewness | null {
  let ofStation = kept.get(winters);
  if (!ofStation || ofStation.size >= MOST_KEPT) kept.set(winters, (ofStation = new Map()));
  const key = `${hours} ${gains.calmC} ${gains.windyC}`;
  let skewness = ofStation.get(key);
  if (skewness === undefined) {
    skewness = stationSkewness(completeValuesC(winters, winterMinima(winters, hours, gains)));
    ofStation.set(key, skewness);
  }
  return skewness;
}
