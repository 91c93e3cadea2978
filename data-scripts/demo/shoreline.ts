import type { RandomStream } from './random-stream.ts';
import type { Shore } from './skeleton-shores.ts';
import type { RiverCourse } from './skeleton-waters.ts';

/** A point in degrees: longitude, latitude. */
export type LonLat = readonly [lon: number, lat: number];

/** Kilometres in one degree of latitude, and of longitude at the region's middle (31.1 N). */
export const KM_PER_DEGREE_LAT = 111.2;
export const KM_PER_DEGREE_LON = 95.2;

/** Straight distance in km on the region's plane; the region is small enough for it. */
export function planeKm(a: LonLat, b: LonLat): number {
  return Math.hypot((a[0] - b[0]) * KM_PER_DEGREE_LON, (a[1] - b[1]) * KM_PER_DEGREE_LAT);
}

const SHORE_STEP_KM = 0.75;
const RUGGED_SHARE = 0.27;
const ROUGHNESS_DECAY = 0.53;

/**
 * Draws a closed shore: a smooth curve through the skeleton, then midpoints pushed sideways again and again, by less
 * each time and in proportion to the ruggedness given, so that beaches stay smooth and cliffs don't.
 */
export function drawShore(shore: Shore, random: RandomStream): LonLat[] {
  const { points } = shore;
  const ring: LonLat[] = [];
  for (let i = 0; i < points.length; i++) {
    const [p0, p1, p2, p3] = [-1, 0, 1, 2].map((step) => toLonLat(points.at((i + step) % points.length)!));
    const ruggedness = points[i][2];
    const pieces = Math.max(1, Math.round(planeKm(p1, p2) / (ruggedness < 0.15 ? 1.3 : 4 + 9 * ruggedness)));
    let from: LonLat = p1;
    for (let k = 1; k <= pieces; k++) {
      const to = k === pieces ? p2 : curvePoint(p0, p1, p2, p3, k / pieces);
      ring.push(from);
      pushMidpoint(from, to, planeKm(from, to) * RUGGED_SHARE * ruggedness, random, ring);
      from = to;
    }
  }
  return ring;
}

/** Draws a river from source to mouth: a smooth curve with bends that widen towards the plain and die out at both ends. */
export function drawRiver(river: RiverCourse, random: RandomStream): LonLat[] {
  const { points, meanderKm } = river;
  const line: LonLat[] = [];
  let phase = 2 * Math.PI * random.uniform();
  let swing = 1;
  for (let i = 0; i + 1 < points.length; i++) {
    const [p1, p2] = [points[i], points[i + 1]];
    const [p0, p3] = [points[Math.max(0, i - 1)], points[Math.min(points.length - 1, i + 2)]];
    const pieces = Math.max(2, Math.round(planeKm(p1, p2) / 0.4));
    for (let k = 0; k < pieces; k++) {
      const along = (i + k / pieces) / (points.length - 1);
      const [x, y] = curvePoint(p0, p1, p2, p3, k / pieces);
      const [ahead, behind] = [
        curvePoint(p0, p1, p2, p3, (k + 0.5) / pieces),
        curvePoint(p0, p1, p2, p3, (k - 0.5) / pieces),
      ];
      const direction = Math.atan2(
        (ahead[1] - behind[1]) * KM_PER_DEGREE_LAT,
        (ahead[0] - behind[0]) * KM_PER_DEGREE_LON,
      );
      phase += 0.18 + 0.5 * random.uniform();
      swing = 0.9 * swing + 0.1 * (2.4 * random.uniform());
      const sideKm =
        meanderKm * swing * Math.min(1, 6 * along, 8 * (1 - along)) * (0.35 + 0.65 * along) * Math.sin(phase);
      line.push(moved([x, y], direction + Math.PI / 2, sideKm));
    }
  }
  line.push(points[points.length - 1]);
  return line;
}

/** Leaves out points that lie within `toleranceKm` of the line without them (Douglas and Peucker's rule). */
export function simplified(line: readonly LonLat[], toleranceKm: number): LonLat[] {
  if (line.length < 3) return [...line];
  const [first, last] = [line[0], line[line.length - 1]];
  let farthest = 0;
  let farthestKm = 0;
  for (let i = 1; i + 1 < line.length; i++) {
    const km = Math.sqrt(segmentDistance(first, last, line[i][1], line[i][0]).squaredKm);
    if (km > farthestKm) [farthest, farthestKm] = [i, km];
  }
  if (farthestKm <= toleranceKm) return [first, last];
  const head = simplified(line.slice(0, farthest + 1), toleranceKm);
  return [...head.slice(0, -1), ...simplified(line.slice(farthest), toleranceKm)];
}

/** Square of the distance from a point to a segment, km², and where on the segment its foot lies (0 to 1). */
export function segmentDistance(
  a: LonLat,
  b: LonLat,
  lat: number,
  lon: number,
): { squaredKm: number; share: number } {
  const ax = (a[0] - lon) * KM_PER_DEGREE_LON;
  const ay = (a[1] - lat) * KM_PER_DEGREE_LAT;
  const dx = (b[0] - a[0]) * KM_PER_DEGREE_LON;
  const dy = (b[1] - a[1]) * KM_PER_DEGREE_LAT;
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, -(ax * dx + ay * dy) / length));
  const [x, y] = [ax + share * dx, ay + share * dy];
  return { squaredKm: x * x + y * y, share };
}

function pushMidpoint(a: LonLat, b: LonLat, pushKm: number, random: RandomStream, out: LonLat[]): void {
  const lengthKm = planeKm(a, b);
  if (lengthKm < SHORE_STEP_KM) return;
  const direction = Math.atan2((b[1] - a[1]) * KM_PER_DEGREE_LAT, (b[0] - a[0]) * KM_PER_DEGREE_LON);
  const share = 0.42 + 0.16 * random.uniform();
  const between: LonLat = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  const sideKm = Math.max(-1.3, Math.min(1.3, random.normal())) * pushKm;
  const middle = moved(between, direction + Math.PI / 2, sideKm);
  pushMidpoint(a, middle, pushKm * ROUGHNESS_DECAY, random, out);
  out.push(middle);
  pushMidpoint(middle, b, pushKm * ROUGHNESS_DECAY, random, out);
}

function moved(point: LonLat, direction: number, km: number): LonLat {
  return [
    point[0] + (km * Math.cos(direction)) / KM_PER_DEGREE_LON,
    point[1] + (km * Math.sin(direction)) / KM_PER_DEGREE_LAT,
  ];
}

/** Centripetal-like cubic through p1 and p2: tangents are shortened where neighbours are far apart, so it never loops. */
function curvePoint(p0: LonLat, p1: LonLat, p2: LonLat, p3: LonLat, t: number): LonLat {
  const [d01, d12, d23] = [planeKm(p0, p1) || 1, planeKm(p1, p2) || 1, planeKm(p2, p3) || 1];
  return [0, 1].map((axis) => {
    const m1 = ((p2[axis] - p0[axis]) * d12) / (d01 + d12);
    const m2 = ((p3[axis] - p1[axis]) * d12) / (d12 + d23);
    const [t2, t3] = [t * t, t * t * t];
    return (
      (2 * t3 - 3 * t2 + 1) * p1[axis] +
      (t3 - 2 * t2 + t) * m1 +
      (3 * t2 - 2 * t3) * p2[axis] +
      (t3 - t2) * m2
    );
  }) as unknown as LonLat;
}

function toLonLat(point: readonly [number, number, number]): LonLat {
  return [point[0], point[1]];
}
