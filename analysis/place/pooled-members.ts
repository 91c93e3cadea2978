import { distanceKm } from './distance.ts';
import type { PlaceModel } from './place-model.ts';

/** Stations whose skewness helps to fix the shape of a fit: at most so many, none farther (km). */
export const POOLED_NEIGHBOURS = 8;
export const POOLED_WITHIN_KM = 150;

/**
 * Members of a model to pool the shape of a point's fit with, nearest first, as indices.
 * @param except id of the station the point stands on
 */
export function pooledMembers(
  { network: { members } }: PlaceModel,
  point: { readonly lat: number; readonly lon: number },
  except: string | null,
): number[] {
  return members
    .map(({ id, site }, member) => ({ id, member, km: distanceKm(site, point) }))
    .filter(({ id, km }) => id !== except && km <= POOLED_WITHIN_KM)
    .sort((a, b) => a.km - b.km || (a.id < b.id ? -1 : 1))
    .slice(0, POOLED_NEIGHBOURS)
    .map(({ member }) => member);
}
