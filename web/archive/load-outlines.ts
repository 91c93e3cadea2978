import { feature, mesh } from 'topojson-client';
import type { Feature, MultiPolygon, Position } from 'geojson';
import type { GeometryCollection, Topology } from 'topojson-specification';
import statesUrl from 'us-atlas/states-10m.json?url';
import worldUrl from 'world-atlas/land-110m.json?url';
import regionUrl from 'world-atlas/land-50m.json?url';
import { ringsOfLand } from '../../analysis/gather/land-outlines.ts';
import { reach } from '../data/reach.ts';

/** A closed ring of land (running on beyond ±180 degrees where it crosses there) or a line of a border, and the box around it. */
export interface Outline {
  readonly points: readonly Position[];
  /** West, south, east, north. */
  readonly box: readonly [number, number, number, number];
}

/** Outlines for the map of places: land of the world in plain lines or finer ones, borders of the states of the US. */
export type OutlineKind = 'world' | 'region' | 'states';

const URLS = { world: worldUrl, region: regionUrl, states: statesUrl };
const loaded = new Map<OutlineKind, Promise<readonly Outline[]>>();

/** Outlines from this site (Natural Earth and the U.S. Census Bureau, public domain); loaded when first asked for. */
export function loadOutlines(kind: OutlineKind): Promise<readonly Outline[]> {
  let outlines = loaded.get(kind);
  if (!outlines) {
    outlines = fetchOutlines(kind);
    loaded.set(kind, outlines);
    outlines.catch(() => loaded.delete(kind));
  }
  return outlines;
}

async function fetchOutlines(kind: OutlineKind): Promise<readonly Outline[]> {
  const url = new URL(URLS[kind], document.baseURI).href;
  const topology = (await (await reach(url, (address) => fetch(address))).json()) as Topology;
  if (kind === 'states') {
    const states = topology.objects.states as GeometryCollection;
    return mesh(topology, states, (a, b) => a !== b).coordinates.map(outline);
  }
  const land = feature(topology, topology.objects.land!);
  const [whole] = ('features' in land ? land.features : [land]) as Feature<MultiPolygon>[];
  return ringsOfLand(whole!).map(outline);
}

function outline(points: readonly Position[]): Outline {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [lon, lat] of points) {
    west = Math.min(west, lon!);
    east = Math.max(east, lon!);
    south = Math.min(south, lat!);
    north = Math.max(north, lat!);
  }
  return { points, box: [west, south, east, north] };
}
