import type { RandomStream } from './random-stream.ts';
import { planeKm } from './shoreline.ts';
import type { Site } from './site-exposure.ts';

/** Distance at which two places' anomalies still share 1/e of their variation, km. */
const REACH_KM = 95;
const DAY_MEMORY = 0.55;

/**
 * Daily standard normal anomalies of all sites, correlated in space (exponential in the distance, by a Cholesky factor)
 * and from day to day: `field[day * sites.length + site]`, one day more than asked so that hours can be interpolated.
 */
export function anomalyField(sites: readonly Site[], days: number, random: RandomStream): Float32Array {
  const n = sites.length;
  const factor = choleskyFactor(sites);
  const field = new Float32Array((days + 1) * n);
  const fresh = new Float64Array(n);
  const innovation = Math.sqrt(1 - DAY_MEMORY * DAY_MEMORY);
  for (let day = 0; day <= days; day++) {
    for (let i = 0; i < n; i++) fresh[i] = random.normal();
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j <= i; j++) sum += factor[i * n + j] * fresh[j];
      const at = day * n + i;
      field[at] = day === 0 ? sum : DAY_MEMORY * field[at - n] + innovation * sum;
    }
  }
  return field;
}

/** Lower triangular root of the sites' correlation matrix, row by row. */
function choleskyFactor(sites: readonly Site[]): Float64Array {
  const n = sites.length;
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const km = planeKm([sites[i].lon, sites[i].lat], [sites[j].lon, sites[j].lat]);
      let sum = i === j ? 1.001 : Math.exp(-km / REACH_KM);
      for (let k = 0; k < j; k++) sum -= factor[i * n + k] * factor[j * n + k];
      factor[i * n + j] = i === j ? Math.sqrt(sum) : sum / factor[j * n + j];
    }
  }
  return factor;
}
