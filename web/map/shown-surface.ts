import type { SurfaceNames } from '../surface/read-cell.ts';
import type { SurfaceView } from '../surface/surface-view.ts';

/** A point of the map, degrees. */
export interface MapPoint {
  readonly lat: number;
  readonly lon: number;
}

/** The surface that the map is given to show, and what its parts are called. */
export interface ShownSurface {
  readonly view: SurfaceView;
  readonly names: SurfaceNames;
}

/** What is known of the point the reader rests on: its answer with the range. */
export interface PointAnswer extends MapPoint {
  readonly lines: readonly string[];
}

/** Where the pointer is on the map, px and degrees. */
export interface Pointed extends MapPoint {
  readonly x: number;
  readonly y: number;
}
