import type { Ranking } from '../../../analysis/answer/assessment.ts';
import type { PackStation } from '../../../analysis/records/pack.ts';

/** The nearest of the stations an answer comes from, `null` when none of them is in the pack. */
export function nearestEvidence(
  { evidence }: Pick<Ranking, 'evidence'>,
  stations: readonly PackStation[],
): { readonly station: PackStation; readonly distanceKm: number } | null {
  const [nearest] = [...evidence].sort((a, b) => a.distanceKm - b.distanceKm);
  const station = stations.find(({ id }) => id === nearest?.id);
  return station ? { station, distanceKm: nearest.distanceKm } : null;
}
