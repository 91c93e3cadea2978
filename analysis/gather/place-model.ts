import { memberOf } from '../answer/place-histories.ts';
import { fitPlaceParameters } from '../place/fit-parameters.ts';
import { canTakePart } from '../place/station-network.ts';
import type { PackPlaceModel, PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';
import { hemisphereOf } from '../winter/winter-year.ts';

/** How winters vary over the land of the stations: fitted by the hemisphere that has most of them. */
export function placeModel(
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
): PackPlaceModel {
  const members = stations.map((station) => memberOf(station, winters.get(station.id)!));
  const able = members.filter((member) => canTakePart(member.winters));
  const south = able.filter(({ site }) => hemisphereOf(site.lat) === 'south');
  const north = able.filter(({ site }) => hemisphereOf(site.lat) === 'north');
  return fitPlaceParameters(south.length > north.length ? south : north);
}
