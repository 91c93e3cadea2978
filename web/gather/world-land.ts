import type { FeatureCollection, MultiPolygon, Feature } from 'geojson';
import { feature } from 'topojson-client';
import type { Topology } from 'topojson-specification';
import fineUrl from 'world-atlas/land-10m.json?url';
import plainUrl from 'world-atlas/land-50m.json?url';
import { clipLand, scaleForMap } from '../../analysis/gather/clip-land.ts';
import { CoastDistance } from '../../analysis/gather/coast-distance.ts';
import { ringsOfLand, ringsOfOutlines } from '../../analysis/gather/land-outlines.ts';
import type { PackBox } from '../../analysis/gather/pack-box.ts';
import { shoresNear } from '../../analysis/gather/shores-near.ts';

const URLS = { '10m': fineUrl, '50m': plainUrl };
const loaded = new Map<keyof typeof URLS, Promise<Feature<MultiPolygon>>>();

/** Land of the world at 1:10 or 1:50 million (Natural Earth by way of world-atlas, public domain), loaded when first asked for. */
function worldLand(scale: keyof typeof URLS): Promise<Feature<MultiPolygon>> {
  let land = loaded.get(scale);
  if (!land) {
    land = fetchLand(URLS[scale]);
    loaded.set(scale, land);
    land.catch(() => loaded.delete(scale));
  }
  return land;
}

async function fetchLand(url: string): Promise<Feature<MultiPolygon>> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  const topology = (await response.json()) as Topology;
  const found = feature(topology, topology.objects.land);
  return ('features' in found ? found.features[0] : found) as Feature<MultiPolygon>;
}

/** Outlines and shores around some stations; `null` where the outlines can't be reached. */
export interface Surroundings {
  readonly land: FeatureCollection;
  readonly coastKm: (place: { readonly lat: number; readonly lon: number }) => number;
}

/** Loads the outlines of the world before they are needed. */
export async function prepareOutlines(): Promise<void> {
  await worldLand('10m').catch(() => {});
}

/**
 * The world's outlines clipped to a box, and distances to its shores.
 * @param places whose distances will be asked for
 */
export async function realSurroundings(
  box: PackBox,
  places: readonly { readonly lat: number; readonly lon: number }[],
): Promise<Surroundings | null> {
  try {
    const coastKm = shoresNear(ringsOfLand(await worldLand('10m')), places);
    return { land: clipLand(await worldLand(scaleForMap(box)), box), coastKm };
  } catch {
    return null;
  }
}

/** Outlines given, and distances to the shores they draw. */
export function drawnSurroundings(land: FeatureCollection): Surroundings {
  const coast = new CoastDistance(ringsOfOutlines(land));
  return { land, coastKm: (place) => coast.of(place) };
}

/** No outlines at all: no shore is known. */
export const NO_SURROUNDINGS: Surroundings = {
  land: { type: 'FeatureCollection', features: [] },
  coastKm: () => Infinity,
};
