import type { Outline } from '../../../archive/load-outlines.ts';

/** Size of the map in its own units. */
export const WIDTH = 720;
export const HEIGHT = 360;

/** Degrees of latitude from the top of the map to its foot, by how close it is: 0 shows the world. */
const SPANS = [180, 60, 20, 8, 3] as const;
export const CLOSEST = SPANS.length - 1;
/** From here on the finer outlines are worth their bytes. */
export const FINE_FROM = 1;

/** What the map shows: a point in the middle and how close. At 0 the world is shown whole. */
export interface MapView {
  readonly lat: number;
  readonly lon: number;
  readonly level: number;
}

interface Scale {
  readonly lat: number;
  readonly lon: number;
  /** Units for a degree north and east; degrees east are drawn as long as they are in the middle of the map. */
  readonly north: number;
  readonly east: number;
}

function scaleOf(view: MapView): Scale {
  if (view.level === 0) return { lat: 0, lon: 0, north: HEIGHT / SPANS[0], east: WIDTH / 360 };
  const span = SPANS[view.level]!;
  const north = HEIGHT / span;
  // Near a pole the map would have no end.
  const lat = Math.max(-89 + span / 2, Math.min(89 - span / 2, view.lat));
  return { lat, lon: view.lon, north, east: north * Math.max(0.1, Math.cos((lat * Math.PI) / 180)) };
}

/** Where a place stands on the map, in its units; it may lie outside. */
export function toMap(view: MapView, lat: number, lon: number): { readonly x: number; readonly y: number } {
  const scale = scaleOf(view);
  return {
    x: WIDTH / 2 + turned(lon - scale.lon) * scale.east,
    y: HEIGHT / 2 - (lat - scale.lat) * scale.north,
  };
}

/** The place at a point of the map. */
export function fromMap(view: MapView, x: number, y: number): { readonly lat: number; readonly lon: number } {
  const scale = scaleOf(view);
  const lat = scale.lat - (y - HEIGHT / 2) / scale.north;
  return {
    lat: Math.max(-90, Math.min(90, lat)),
    lon: turned(scale.lon + (x - WIDTH / 2) / scale.east),
  };
}

/** Degrees that an arrow key moves the mark by. */
export function stepDegrees(view: MapView): number {
  return SPANS[view.level]! / 60;
}

/** Length of so many km upward on the map, in its units. */
export function kmOnMap(view: MapView, km: number): number {
  return (km / 111.195) * scaleOf(view).north;
}

/** Within -180 and 180. */
export function turned(lon: number): number {
  return lon >= -180 && lon <= 180 ? lon : ((((lon + 180) % 360) + 360) % 360) - 180;
}

/** The outlines as the `d` of a path, only those that show; closed where they are of land. */
export function pathOf(outlines: readonly Outline[], view: MapView, closed: boolean): string {
  const scale = scaleOf(view);
  const [reachEast, reachNorth] = [WIDTH / 2 / scale.east + 1, HEIGHT / 2 / scale.north + 1];
  const pieces: string[] = [];
  for (const { points, box } of outlines) {
    if (box[3] < scale.lat - reachNorth || box[1] > scale.lat + reachNorth) continue;
    for (const turn of [-360, 0, 360]) {
      if (box[2] + turn < scale.lon - reachEast || box[0] + turn > scale.lon + reachEast) continue;
      pieces.push(pieceOf(points, turn, scale) + (closed ? 'Z' : ''));
    }
  }
  return pieces.join('');
}

/** Points nearer to the one before than half a unit are left out. */
function pieceOf(points: Outline['points'], turn: number, scale: Scale): string {
  let text = '';
  let [lastX, lastY] = [Infinity, Infinity];
  for (const [lon, lat] of points) {
    const x = WIDTH / 2 + (lon! + turn - scale.lon) * scale.east;
    const y = HEIGHT / 2 - (lat! - scale.lat) * scale.north;
    if (Math.abs(x - lastX) < 0.5 && Math.abs(y - lastY) < 0.5) continue;
    text += `${text === '' ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`;
    [lastX, lastY] = [x, y];
  }
  return text;
}
