import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Feature, FeatureCollection, MultiPolygon } from 'geojson';
import { feature } from 'topojson-client';
import type { Topology } from 'topojson-specification';
import { clipLand, scaleForMap } from '../../analysis/gather/clip-land.ts';
import type { PackBox } from '../../analysis/gather/pack-box.ts';

type Scale = '10m' | '50m';

const read = new Map<Scale, Feature<MultiPolygon>>();

/** Land of the world at 1:10 or 1:50 million (Natural Earth by way of world-atlas, public domain). */
export function worldLand(scale: Scale = '10m'): Feature<MultiPolygon> {
  let land = read.get(scale);
  if (!land) {
    const file = createRequire(import.meta.url).resolve(`world-atlas/land-${scale}.json`);
    const topology = JSON.parse(readFileSync(file, 'utf8')) as Topology;
    const found = feature(topology, topology.objects.land);
    [land] = ('features' in found ? found.features : [found]) as Feature<MultiPolygon>[];
    read.set(scale, land);
  }
  return land;
}

/** Outlines for the map of a pack: fine ones for a region, plainer ones for a continent. */
export function landForMap(box: PackBox): FeatureCollection {
  return clipLand(worldLand(scaleForMap(box)), box);
}
