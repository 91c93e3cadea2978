import { normalCdf, normalQuantile } from '../math/normal.ts';
import { countedPeriod, countHits, type Counted } from './counted.ts';
import { levelErrorC, type InterpolationError } from './interpolation-error.ts';

/** Half the 90 % range of a standard normal; that divided by the root of 2, and the level this belongs to. */
const Z_NINETY = normalQuantile(0.95);
const Z_SHARED = Z_NINETY / Math.SQRT2;
const SHARED_LEVEL = 2 * normalCdf(Z_SHARED) - 1;

/**
 * The count at a place whose winters are estimated, with a range that holds both that few winters were seen (Wilson) and
 * that their level may be off. The two are independent, so their errors add up as squares; a count isn't normal, so the
 * range is the widest of three: the first alone at 90 %, the second alone at 90 %, and both at 1/sqrt(2) of their width,
 * which is what squares give when they weigh alike.
 * @param valuesC winter values in °C, NaN for a winter without a cold night
 */
export function estimatedCount(valuesC: Float64Array, limitC: number, error: InterpolationError): Counted {
  const winters = valuesC.length;
  const counted = countedPeriod(countHits(valuesC, limitC), winters);
  const off = levelErrorC(error, limitC);
  let { low, high } = counted;
  for (const [z, level] of [
    [Z_NINETY, 0],
    [Z_SHARED, SHARED_LEVEL],
  ] as const) {
    const often = countHits(valuesC, limitC + z * off);
    const seldom = countHits(valuesC, limitC - z * off);
    low = Math.min(low, level === 0 ? winters / often : countedPeriod(often, winters, level).low);
    high = Math.max(high, level === 0 ? winters / seldom : countedPeriod(seldom, winters, level).high);
  }
  return { ...counted, low: Math.max(1, low), high };
}
