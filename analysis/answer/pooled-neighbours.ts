import { stationSkewness, type StationSkewness } from '../extremes/pooled-shape.ts';
import type { WinterTable } from '../records/winters.ts';
import { winterMinima, type Gains } from '../winter/winter-minima.ts';
import { completeValuesC } from './winter-values.ts';

/** What a neighbouring station says of the shape for a number of hours and gains; null where it has too few winters. */
export function neighbourSkewness(winters: WinterTable, hours: number, gains: Gains): StationSkewness | null {
  return stationSkewness(completeValuesC(winters, winterMinima(winters, hours, gains)));
}
