import type { FeatureCollection, LineString } from 'geojson';

/** West, south, east, north, degrees. */
export type Box = readonly [number, number, number, number];

const STEPS_DEGREES = [0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10, 15, 30];

/** Spacing of parallels and meridians that gives about `count` lines across `spanDegrees`. */
export function graticuleStep(spanDegrees: number, count = 4): number {
  return STEPS_DEGREES.find((step) => spanDegrees / step <= count + 1) ?? 30;
}

/** Multiples of `step` from `low` to `high`, rounded so that 0.1 steps stay 0.1 steps. */
export function graticuleMarks(low: number, high: number, step: number): number[] {
  const marks: number[] = [];
  for (let i = Math.ceil(low / step - 1e-9); i * step <= high + 1e-9; i++)
    marks.push(Number((i * step).toFixed(4)));
  return marks;
}

/** Parallels and meridians over a box, as lines. */
export function graticuleLines(box: Box, step: number): FeatureCollection<LineString> {
  const [west, south, east, north] = box;
  const line = (coordinates: [number, number][]) => ({
    type: 'Feature' as const,
    properties: {},
    geometry: { type: 'LineString' as const, coordinates },
  });
  return {
    type: 'FeatureCollection',
    features: [
      ...graticuleMarks(west, east, step).map((lon) =>
        line([
          [lon, south],
          [lon, north],
        ]),
      ),
      ...graticuleMarks(south, north, step).map((lat) =>
        line([
          [west, lat],
          [east, lat],
        ]),
      ),
    ],
  };
}

/** `42° 30′ W`, `31° N`, `0°`. */
export function graticuleLabel(degrees: number, positive: string, negative: string): string {
  const minutes = Math.round(Math.abs(degrees) * 60);
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  const side = minutes === 0 ? '' : ` ${degrees < 0 ? negative : positive}`;
  return `${whole}°${rest ? ` ${String(rest).padStart(2, '0')}′` : ''}${side}`;
}

/** The map's library wraps what reaches further, and then holds the map on the other side of the Earth. */
const FURTHEST_LON = 179.999;

/** The box grown on every side by a share of its size, kept within the Mercator map. */
export function grownBox([west, south, east, north]: Box, share: number): Box {
  const [dx, dy] = [(east - west) * share, (north - south) * share];
  return [
    Math.max(-FURTHEST_LON, west - dx),
    Math.max(-84, south - dy),
    Math.min(FURTHEST_LON, east + dx),
    Math.min(84, north + dy),
  ];
}

/** Smallest side of a map, degrees: a pack may have one station, whose own box has no size. */
const LEAST_SIDE_DEGREES = 1;

/** The box, widened round its middle where a side is shorter than a map needs. */
export function drawableBox([west, south, east, north]: Box): Box {
  const dx = Math.max(0, LEAST_SIDE_DEGREES - (east - west)) / 2;
  const dy = Math.max(0, LEAST_SIDE_DEGREES - (north - south)) / 2;
  return [west - dx, Math.max(-84, south - dy), east + dx, Math.min(84, north + dy)];
}
