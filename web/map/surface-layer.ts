import type { FeatureCollection } from 'geojson';
import { contourBands, landRings } from '../surface/contour-bands.ts';
import { mercatorY } from '../surface/mercator.ts';
import {
  bandPaths,
  landPath,
  paintBands,
  paintCells,
  ringsPath,
  type BandPaths,
} from '../surface/paint-surface.ts';
import { surfacePlan, type SurfacePlan } from '../surface/surface-plan.ts';
import type { SurfaceView } from '../surface/surface-view.ts';
import type { Box } from './graticule.ts';
import type { MapPicture, MapView } from './map-view.ts';
import type { MapPalette } from './palette.ts';

/** Bands follow when nothing has changed for so long, ms. */
const CALM_MS = 140;

/**
 * The surface on the map: cells at once, bands with crisp edges when the reader's hand rests. Bands are made in a few
 * milliseconds, but to paint them takes twice as long as cells where the browser draws without a graphics card.
 */
export class SurfaceLayer implements MapPicture {
  readonly canvas = document.createElement('canvas');
  readonly #probe = document.createElement('canvas').getContext('2d')!;
  readonly #outlines: Path2D | null;
  #land: Path2D | null = null;
  #plan: SurfacePlan | null = null;
  #bands: BandPaths | null = null;
  #calm: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly map: MapView,
    land: FeatureCollection | null,
  ) {
    this.#outlines = landPath(land);
  }

  show(view: SurfaceView): void {
    clearTimeout(this.#calm);
    this.#plan = surfacePlan(view);
    this.#bands = null;
    this.#land = this.#outlines ?? ringsPath(landRings(view.surface));
    this.map.setPicture(this);
    this.#calm = setTimeout(() => this.#sharpen(), CALM_MS);
  }

  /** Takes the surface off the map. */
  remove(): void {
    clearTimeout(this.#calm);
    this.map.setPicture(null);
  }

  isLand(lon: number, lat: number): boolean {
    return this.#land !== null && this.#probe.isPointInPath(this.#land, lon, mercatorY(lat), 'evenodd');
  }

  paint(box: Box, widthPx: number, heightPx: number, ratio: number, palette: MapPalette): void {
    if (!this.#plan) return;
    const [west, south, east, north] = box;
    const frame = { west, south, east, north, widthPx, heightPx, ratio };
    if (this.#bands) paintBands(this.canvas, this.#bands, frame, this.#land, palette);
    else paintCells(this.canvas, this.#plan, frame, this.#land, palette);
  }

  /** Bands now, without waiting: for print. */
  sharpenNow(): void {
    clearTimeout(this.#calm);
    if (!this.#bands) this.#sharpen();
  }

  #sharpen(): void {
    if (!this.#plan) return;
    this.#bands = bandPaths(this.#plan, contourBands(this.#plan));
    this.map.setPicture(this);
  }
}
