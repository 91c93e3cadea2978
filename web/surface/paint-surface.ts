import type { FeatureCollection, Position } from 'geojson';
import type { BandArea } from './contour-bands.ts';
import { mercatorY } from './mercator.ts';
import { classIndex, NO_ANSWER, type Fill } from './paint-classes.ts';
import type { CellLayout, SurfacePlan } from './surface-plan.ts';

/** Plain colours to paint with. */
export interface SurfaceColours {
  readonly land: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly cold: readonly string[];
  readonly warm: readonly string[];
}

/** The part of the map to paint, degrees, and the canvas it fills, px. North is up. */
export interface PaintFrame {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Canvas px for one px on screen. */
  readonly ratio: number;
}

const HATCH_GAP_PX = 7;
const DOT_GAP_PX = 6;
/** Line between two bands, px, and its share of ink. */
const EDGE_PX = 0.75;
const EDGE_SHARE = 0.38;

/** Outlines of the land, as a path in degrees east and Mercator degrees; `null` where none are known. */
export function landPath(land: FeatureCollection | null): Path2D | null {
  const rings: Position[][] = [];
  for (const { geometry, properties } of land?.features ?? []) {
    if (properties?.kind !== 'land') continue;
    if (geometry.type === 'Polygon') rings.push(...geometry.coordinates);
    else if (geometry.type === 'MultiPolygon') rings.push(...geometry.coordinates.flat());
  }
  return rings.length === 0 ? null : ringsPath(rings);
}

/** Closed rings in degrees as one path. */
export function ringsPath(rings: readonly (readonly Position[])[]): Path2D {
  const path = new Path2D();
  for (const ring of rings) {
    ring.forEach(([lon, lat], i) =>
      i === 0 ? path.moveTo(lon, mercatorY(lat)) : path.lineTo(lon, mercatorY(lat)),
    );
    path.closePath();
  }
  return path;
}

export function fillColour(fill: Fill, colours: SurfaceColours): string {
  return fill.ramp === 'land' ? colours.land : colours[fill.ramp][fill.step - 1];
}

/** Scales the pen so that paths in degrees fall on the canvas. */
function aim(pen: CanvasRenderingContext2D, frame: PaintFrame): void {
  const [bottom, top] = [mercatorY(frame.south), mercatorY(frame.north)];
  const [x, y] = [frame.widthPx / (frame.east - frame.west), frame.heightPx / (top - bottom)];
  pen.setTransform(x, 0, 0, -y, -frame.west * x, top * y);
}

/** Fills a path with a class: its colour, over it hatching or dots that keep their size on screen. */
function fillWith(
  pen: CanvasRenderingContext2D,
  path: Path2D,
  fill: Fill,
  frame: PaintFrame,
  colours: SurfaceColours,
): void {
  pen.fillStyle = fillColour(fill, colours);
  pen.fill(path, 'evenodd');
  if (fill.ramp !== 'land' || fill.pattern === 'plain') return;
  const pattern = pen.createPattern(patternTile(fill.pattern, frame.ratio, colours), 'repeat')!;
  pattern.setTransform(pen.getTransform().inverse());
  pen.fillStyle = pattern;
  pen.fill(path, 'evenodd');
}

/** A tile of hatching or of dots. */
export function patternTile(
  kind: 'hatched' | 'dotted',
  ratio: number,
  colours: SurfaceColours,
): HTMLCanvasElement {
  const gap = Math.round((kind === 'hatched' ? HATCH_GAP_PX : DOT_GAP_PX) * ratio);
  const tile = document.createElement('canvas');
  tile.width = tile.height = gap;
  const pen = tile.getContext('2d')!;
  pen.globalAlpha = kind === 'hatched' ? 0.55 : 0.5;
  pen.strokeStyle = pen.fillStyle = colours.inkSoft;
  if (kind === 'dotted') {
    pen.beginPath();
    pen.arc(gap / 2, gap / 2, 0.75 * ratio, 0, 2 * Math.PI);
    pen.fill();
    return tile;
  }
  pen.lineWidth = 0.9 * ratio;
  for (const shift of [-gap, 0, gap]) {
    pen.beginPath();
    pen.moveTo(shift - gap, 2 * gap);
    pen.lineTo(shift + 2 * gap, -gap);
    pen.stroke();
  }
  return tile;
}

/** Starts a canvas afresh for a frame, clipped to the land if its outlines are known. */
function begin(canvas: HTMLCanvasElement, frame: PaintFrame, land: Path2D | null): CanvasRenderingContext2D {
  if (canvas.width !== frame.widthPx || canvas.height !== frame.heightPx) {
    canvas.width = frame.widthPx;
    canvas.height = frame.heightPx;
  }
  const pen = canvas.getContext('2d')!;
  pen.reset();
  aim(pen, frame);
  if (land) pen.clip(land, 'evenodd');
  return pen;
}

/** The rectangle of the cells, as a path. */
function extentOf({ columns, rows, west, south, stepLonDeg, stepLatDeg }: CellLayout): Path2D {
  const [left, bottom] = [west - stepLonDeg / 2, mercatorY(south - stepLatDeg / 2)];
  const path = new Path2D();
  path.rect(left, bottom, columns * stepLonDeg, mercatorY(south + (rows - 0.5) * stepLatDeg) - bottom);
  return path;
}

/** Hatches all of the frame, as land out of reach is, and clips what follows to the cells. */
function untoldBeyond(
  pen: CanvasRenderingContext2D,
  extent: Path2D,
  frame: PaintFrame,
  colours: SurfaceColours,
): void {
  fillWith(pen, frameRect(frame), NO_ANSWER.fill, frame, colours);
  pen.clip(extent);
}

function frameRect({ west, south, east, north }: PaintFrame): Path2D {
  const path = new Path2D();
  path.rect(west, mercatorY(south), east - west, mercatorY(north) - mercatorY(south));
  return path;
}

/** Areas with crisp edges, made once a plan. */
export interface BandPaths {
  /** Where there are cells. */
  readonly extent: Path2D;
  readonly ground: Fill;
  readonly areas: readonly { readonly fill: Fill; readonly path: Path2D }[];
}

export function bandPaths(plan: SurfacePlan, bands: readonly BandArea[]): BandPaths {
  return {
    extent: extentOf(plan.layout),
    ground: plan.scale.classes[0].fill,
    areas: bands.map(({ paintClass, rings }) => ({ fill: paintClass.fill, path: ringsPath(rings) })),
  };
}

/** Paints bands with crisp edges, each edge a thin line. */
export function paintBands(
  canvas: HTMLCanvasElement,
  bands: BandPaths,
  frame: PaintFrame,
  land: Path2D | null,
  colours: SurfaceColours,
): void {
  const pen = begin(canvas, frame, land);
  untoldBeyond(pen, bands.extent, frame, colours);
  pen.fillStyle = fillColour(bands.ground, colours);
  pen.fill(frameRect(frame));
  for (const { path, fill } of bands.areas) {
    fillWith(pen, path, fill, frame, colours);
    pen.save();
    // The path is made in degrees, the line in px.
    const outline = new Path2D();
    outline.addPath(path, pen.getTransform());
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.strokeStyle = colours.ink;
    pen.globalAlpha = EDGE_SHARE;
    pen.lineWidth = EDGE_PX * frame.ratio;
    pen.stroke(outline);
    pen.restore();
  }
}

/** Paints each cell in the colour of its class: quicker than bands, for a slider in motion. */
export function paintCells(
  canvas: HTMLCanvasElement,
  plan: SurfacePlan,
  frame: PaintFrame,
  land: Path2D | null,
  colours: SurfaceColours,
): void {
  const pen = begin(canvas, frame, land);
  const { layout, scale, logs, overlays } = plan;
  untoldBeyond(pen, extentOf(layout), frame, colours);
  const classes = scale.classes.map(() => new Path2D());
  const covers = overlays.map(() => new Path2D());
  for (let row = 0; row < layout.rows; row++) {
    const south = mercatorY(layout.south + (row - 0.5) * layout.stepLatDeg);
    const height = mercatorY(layout.south + (row + 0.5) * layout.stepLatDeg) - south;
    const run = (from: number, to: number, path: Path2D): void =>
      path.rect(
        layout.west + (from - 0.5) * layout.stepLonDeg,
        south,
        (to - from) * layout.stepLonDeg,
        height,
      );
    // Each class with all beyond it, painted one over the other, so that no seam shows between two.
    classes.forEach((path, k) =>
      runs(
        layout.columns,
        (c) => classOf(plan, logs[row * layout.columns + c]) >= k,
        (inside, from, to) => {
          if (inside) run(from, to, path);
        },
      ),
    );
    overlays.forEach(({ field }, o) =>
      runs(
        layout.columns,
        (c) => field[row * layout.columns + c] > 0,
        (on, from, to) => {
          if (on) run(from, to, covers[o]);
        },
      ),
    );
  }
  classes.forEach((path, k) => fillWith(pen, path, scale.classes[k].fill, frame, colours));
  covers.forEach((path, o) => fillWith(pen, path, overlays[o].paintClass.fill, frame, colours));
}

function classOf({ scale }: SurfacePlan, log: number): number {
  return Number.isNaN(log) ? -1 : classIndex(scale, Math.exp(log));
}

/** Calls `each` for every run of columns with the same value, `to` outside. */
function runs(
  columns: number,
  valueAt: (column: number) => boolean,
  each: (value: boolean, from: number, to: number) => void,
): void {
  let from = 0;
  for (let column = 1; column <= columns; column++) {
    const value = valueAt(from);
    if (column < columns && valueAt(column) === value) continue;
    each(value, from, column);
    from = column;
  }
}
