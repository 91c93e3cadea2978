import { sharedCovariance, type Covariance } from './covariance.ts';

/** Two stations whose difference has less than this part of their variance count as standing at one place. */
const SAME_PLACE = 1e-9;
/** What is added to the variance of stations at one place, as a part of it, so that they can be told apart at all. */
const APART = 1e-6;
/** Smallest variance of a station, as a part of the largest; or, where none has any, by itself. */
const LEAST_VARIANCE = 1e-12;

/**
 * Covariance matrix of the stations' values: the shared part by distance; on the diagonal also the nugget, which is each
 * station's own even where two stand at one place, and the known variance of its error.
 *
 * It is kept invertible whatever the network: stations at one place without nugget and error get a millionth of their
 * variance each, so that their mean counts; where nothing varies at all every station counts alike.
 * @param distancesKm n x n by rows.
 * @returns n x n by rows.
 */
export function stationCovariance(
  covariance: Covariance,
  distancesKm: Float64Array,
  n: number,
  errorVariance?: ArrayLike<number>,
): Float64Array {
  const matrix = new Float64Array(n * n);
  let largest = 0;
  for (let i = 0; i < n; i++) {
    const own = covariance.sill + covariance.nugget + (errorVariance?.[i] ?? 0);
    matrix[i * n + i] = own;
    largest = Math.max(largest, own);
  }
  const least = largest > 0 ? LEAST_VARIANCE * largest : LEAST_VARIANCE;
  for (let i = 0; i < n; i++) matrix[i * n + i] = Math.max(matrix[i * n + i]!, least);
  const notAlone = new Uint8Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const shared = sharedCovariance(covariance, distancesKm[i * n + j]!);
      matrix[i * n + j] = matrix[j * n + i] = shared;
      const both = matrix[i * n + i]! + matrix[j * n + j]!;
      if (both - 2 * shared < SAME_PLACE * both) notAlone[i] = notAlone[j] = 1;
    }
  }
  for (let i = 0; i < n; i++) if (notAlone[i]) matrix[i * n + i]! *= 1 + APART;
  return matrix;
}
