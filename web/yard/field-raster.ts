import { contours } from 'd3-contour';
import type { OffsetField } from '../../analysis/spot/offset-field.ts';
import { filledValues, nightOf, paintDoubt, paintOffsets, type FieldNight } from './paint-field.ts';
import { PatternBook } from './patterns.ts';
import type { PlanPalette } from './plan-palette.ts';

/** What the picture of a field depends on. */
export interface FieldPicture {
  readonly field: OffsetField;
  readonly night: FieldNight;
  readonly palette: PlanPalette;
  /** Size of the plot on the sheet, px, and canvas px for one of them. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly ratio: number;
  /** Degrees between two lines, °C, and how a line's value is written. */
  readonly lineStepC: number;
  readonly writeLine: (offsetC: number) => string;
}

/** Small canvases are filled byte by byte at every field: kept out of the graphics card. */
const IN_MEMORY: CanvasRenderingContext2DSettings = { willReadFrequently: true };
const LINE_SHARE = 0.34;
/** Shorter lines bear no figure, px. */
const LABELLED_FROM_PX = 110;
const FONT = '12px "Source Sans 3 Variable", "Source Sans 3", sans-serif';

/** Paints a field as a smooth ground with thin lines of equal offset, hatched where the doubt is larger than the offset. */
export class FieldRaster {
  readonly canvas = document.createElement('canvas');
  readonly #patterns = new PatternBook();
  readonly #cells = document.createElement('canvas');
  readonly #mask = document.createElement('canvas');
  readonly #doubt = document.createElement('canvas');

  paint(picture: FieldPicture): void {
    const { field, widthPx, heightPx, ratio } = picture;
    const [width, height] = [Math.round(widthPx * ratio), Math.round(heightPx * ratio)];
    if (this.canvas.width !== width) this.canvas.width = width;
    if (this.canvas.height !== height) this.canvas.height = height;
    const pen = this.canvas.getContext('2d')!;
    pen.reset();
    pen.imageSmoothingEnabled = true;
    const values = filledValues(field, nightOf(field, picture.night).offsetC);
    pen.drawImage(this.#paintCells(picture, values), 0, 0, width, height);
    pen.scale(ratio, ratio);
    this.#hatchDoubt(pen, picture);
    drawLines(pen, picture, values, [widthPx / field.columns, heightPx / field.rows]);
  }

  #paintCells({ field, palette }: FieldPicture, values: Float32Array): HTMLCanvasElement {
    const { columns, rows } = field;
    Object.assign(this.#cells, { width: columns, height: rows });
    const image = new ImageData(columns, rows);
    paintOffsets(field, values, palette.field, image.data);
    this.#cells.getContext('2d', IN_MEMORY)!.putImageData(image, 0, 0);
    return this.#cells;
  }

  #hatchDoubt(
    pen: CanvasRenderingContext2D,
    { field, night, palette, widthPx, heightPx }: FieldPicture,
  ): void {
    const { columns, rows } = field;
    const mask = new ImageData(columns, rows);
    if (paintDoubt(field, night, mask.data) === 0) return;
    Object.assign(this.#mask, { width: columns, height: rows });
    this.#mask.getContext('2d', IN_MEMORY)!.putImageData(mask, 0, 0);
    Object.assign(this.#doubt, { width: Math.round(widthPx), height: Math.round(heightPx) });
    const doubt = this.#doubt.getContext('2d')!;
    doubt.drawImage(this.#mask, 0, 0, this.#doubt.width, this.#doubt.height);
    doubt.globalCompositeOperation = 'source-in';
    doubt.fillStyle = doubt.createPattern(this.#patterns.tile('doubt', palette.inkSoft, 1), 'repeat')!;
    doubt.fillRect(0, 0, this.#doubt.width, this.#doubt.height);
    pen.save();
    pen.globalAlpha = 0.55;
    pen.drawImage(this.#doubt, 0, 0, widthPx, heightPx);
    pen.restore();
  }
}

function drawLines(
  pen: CanvasRenderingContext2D,
  picture: FieldPicture,
  values: Float32Array,
  [stepX, stepY]: [number, number],
): void {
  const { field, palette, heightPx, lineStepC, writeLine } = picture;
  let [lowest, highest] = [0, 0];
  for (const value of values) {
    lowest = Math.min(lowest, value);
    highest = Math.max(highest, value);
  }
  const steps: number[] = [];
  for (let k = Math.ceil(lowest / lineStepC); k <= highest / lineStepC; k++)
    if (k !== 0) steps.push(k * lineStepC);
  if (steps.length === 0) return;
  pen.lineWidth = 0.9;
  pen.font = FONT;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  const lines = contours().size([field.columns, field.rows]).thresholds(steps)(values as unknown as number[]);
  for (const { value, coordinates } of lines) {
    for (const ring of coordinates.flat()) {
      const points = ring.map(([x, y]) => [x * stepX, heightPx - y * stepY] as const);
      pen.globalAlpha = LINE_SHARE;
      pen.strokeStyle = palette.ink;
      strokeInside(pen, points, [field.columns * stepX, heightPx]);
      labelLine(pen, points, writeLine(value), palette, [field.columns * stepX, heightPx]);
    }
  }
}

/** A line along the edge of the plot is no line of the field: only the rest is drawn. */
function strokeInside(
  pen: CanvasRenderingContext2D,
  points: readonly (readonly [number, number])[],
  [width, height]: [number, number],
): void {
  const onEdge = ([x, y]: readonly [number, number]): boolean =>
    x < 1 || y < 1 || x > width - 1 || y > height - 1;
  pen.beginPath();
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before && !(onEdge(before) && onEdge(point))) pen.lineTo(...point);
    else pen.moveTo(...point);
  });
  pen.stroke();
}

function labelLine(
  pen: CanvasRenderingContext2D,
  points: readonly (readonly [number, number])[],
  text: string,
  palette: PlanPalette,
  [width, height]: [number, number],
): void {
  let longPx = 0;
  for (let i = 1; i < points.length; i++)
    longPx += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
  if (longPx < LABELLED_FROM_PX) return;
  const inside = points.filter(([x, y]) => x > 16 && y > 10 && x < width - 16 && y < height - 10);
  const at = inside[Math.floor(inside.length * 0.3)];
  if (!at) return;
  pen.globalAlpha = 0.85;
  pen.lineWidth = 3;
  pen.strokeStyle = palette.paper;
  pen.strokeText(text, ...at);
  pen.globalAlpha = 1;
  pen.fillStyle = palette.ink;
  pen.fillText(text, ...at);
  pen.lineWidth = 0.9;
}
