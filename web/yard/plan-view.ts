import { Layer } from 'konva/lib/Layer.js';
import type { Node } from 'konva/lib/Node.js';
import { Image as KonvaImage } from 'konva/lib/shapes/Image.js';
import { Line } from 'konva/lib/shapes/Line.js';
import { Rect } from 'konva/lib/shapes/Rect.js';
import { Stage } from 'konva/lib/Stage.js';
import type { PlanPoint, Yard } from '../../analysis/spot/yard.ts';
import type { BearingOf } from './bearings.ts';
import { findThing } from './edit-yard.ts';
import { FieldRaster, type FieldPicture } from './field-raster.ts';
import { bearingShape, bestShape, chosenShape, cursorShape, handleShapes, spotShape } from './mark-shapes.ts';
import { PatternBook } from './patterns.ts';
import type { PlanHit } from './plan-gestures.ts';
import type { PlanPalette } from './plan-palette.ts';
import { toPx, type PlanScale } from './plan-scale.ts';
import { inDrawingOrder, thingShapes } from './thing-shapes.ts';
import { pictureOnCanvas, type UnderlaidPicture } from './underlaid-picture.ts';

export interface ShownGround {
  readonly scale: PlanScale;
  readonly palette: PlanPalette;
  readonly plot: Pick<Yard, 'widthM' | 'depthM'>;
  readonly field: Omit<FieldPicture, 'palette' | 'widthPx' | 'heightPx' | 'ratio'> | null;
  readonly picture: UnderlaidPicture | null;
}

export interface ShownThings {
  readonly scale: PlanScale;
  readonly palette: PlanPalette;
  readonly yard: Yard;
  readonly selectedId: string | null;
  readonly wrongIds: readonly string[];
  /** Fingers need larger handles. */
  readonly touch: boolean;
  /** Being dragged: nothing needs to be hit meanwhile. */
  readonly busy: boolean;
}

export interface ShownMarks {
  readonly scale: PlanScale;
  readonly palette: PlanPalette;
  readonly best: readonly PlanPoint[];
  readonly chosen: PlanPoint | null;
  readonly cursor: PlanPoint | null;
  /** Corners of what is being drawn. */
  readonly sketch: readonly PlanPoint[];
}

/** The one class around Konva: three layers of a sheet, drawn anew when what they show changes. */
export class PlanView {
  readonly #stage: Stage;
  readonly #ground = new Layer({ listening: false });
  readonly #things = new Layer();
  readonly #marks = new Layer({ listening: false });
  readonly #raster = new FieldRaster();
  #patterns = new PatternBook();
  #patternsFor: PlanPalette | null = null;

  constructor(holder: HTMLDivElement) {
    this.#stage = new Stage({ container: holder, width: 1, height: 1 });
    this.#stage.add(this.#ground, this.#things, this.#marks);
  }

  size({ widthPx, heightPx }: PlanScale): void {
    this.#stage.size({ width: widthPx, height: heightPx });
  }

  ground({ scale, palette, plot, field, picture }: ShownGround): void {
    const layer = this.#ground.destroyChildren();
    const [left, top] = toPx(scale, [0, plot.depthM]);
    const [widthPx, heightPx] = [plot.widthM * scale.pxPerM, plot.depthM * scale.pxPerM];
    if (picture) {
      layer.add(new KonvaImage({ image: picture.image, ...pictureOnCanvas(picture, scale) }));
    }
    if (field) {
      const ratio = Math.min(2, devicePixelRatio);
      this.#raster.paint({ ...field, palette, widthPx, heightPx, ratio });
      layer.add(
        new KonvaImage({
          image: this.#raster.canvas,
          x: left,
          y: top,
          width: widthPx,
          height: heightPx,
          opacity: picture ? 0.6 : 1,
        }),
      );
    }
    for (const grow of [0, 3])
      layer.add(
        new Rect({
          x: left - grow,
          y: top - grow,
          width: widthPx + 2 * grow,
          height: heightPx + 2 * grow,
          stroke: palette.inkSoft,
          strokeWidth: 1,
        }),
      );
    layer.batchDraw();
  }

  things({ scale, palette, yard, selectedId, wrongIds, touch, busy }: ShownThings): void {
    if (this.#patternsFor !== palette) this.#patterns = new PatternBook();
    this.#patternsFor = palette;
    const layer = this.#things.destroyChildren();
    layer.listening(!busy);
    const drawn = { scale, palette, patterns: this.#patterns };
    for (const thing of inDrawingOrder(yard.things)) {
      const standing = wrongIds.includes(thing.id) ? 'wrong' : thing.id === selectedId ? 'selected' : 'plain';
      layer.add(thingShapes(thing, standing, drawn));
    }
    for (const of of ['water', 'slope', 'wind'] as const) {
      const shape = bearingShape(yard, of, scale, palette);
      if (shape) layer.add(shape);
    }
    for (const spot of yard.spots) layer.add(spotShape(spot, spot.id === selectedId, scale, palette));
    const selected = findThing(yard, selectedId);
    if (selected) layer.add(handleShapes(selected, scale, palette, touch));
    layer.batchDraw();
  }

  marks({ scale, palette, best, chosen, cursor, sketch }: ShownMarks): void {
    const layer = this.#marks.destroyChildren();
    best.forEach((at, i) => layer.add(bestShape(at, i + 1, scale, palette)));
    if (chosen) layer.add(chosenShape(chosen, scale, palette));
    if (cursor) layer.add(cursorShape(cursor, scale, palette));
    if (sketch.length > 0) {
      const points = sketch.flatMap((corner) => toPx(scale, corner));
      layer.add(
        new Line({
          points,
          closed: sketch.length > 2,
          stroke: palette.accent,
          strokeWidth: 1.5,
          dash: [5, 3],
        }),
      );
      for (const corner of sketch) {
        const [x, y] = toPx(scale, corner);
        layer.add(new Rect({ x: x - 3, y: y - 3, width: 6, height: 6, fill: palette.accent }));
      }
    }
    layer.batchDraw();
  }

  /** What lies at a point of the sheet, px. */
  hit(x: number, y: number): PlanHit | null {
    let node: Node | null = this.#stage.getIntersection({ x, y });
    for (; node; node = node.getParent()) {
      const [name, id] = [node.name(), node.id()];
      if (name === 'thing' || name === 'spot') return { part: name, id };
      if (name === 'bearing') return { part: 'bearing', of: id.split(' ')[1] as BearingOf };
      if (name === 'corner' || name === 'middle') {
        const [, index, ...rest] = id.split(' ');
        return { part: name, id: rest.join(' '), index: Number(index) };
      }
    }
    return null;
  }

  /** What is drawn, as an image (`data:`); `ratio` dots for one px. */
  picture(ratio: number): string {
    return this.#stage.toDataURL({ pixelRatio: ratio });
  }

  remove(): void {
    this.#stage.destroy();
  }
}
