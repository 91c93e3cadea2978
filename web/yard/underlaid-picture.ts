import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PlanPoint } from '../../analysis/spot/yard.ts';
import { checkSize } from '../data/check-size.ts';
import { formatCount } from '../format/numbers.ts';
import { toPx, type PlanScale } from './plan-scale.ts';
import { toGrain } from './snapping.ts';

/** A picture of the reader's own under the plan. It stays in the browser and is gone on reload. */
export interface UnderlaidPicture {
  readonly name: string;
  readonly image: HTMLImageElement;
  /** Height as a share of the width. */
  readonly shape: number;
  /** Its south-west corner on the plan before it is turned, m. */
  readonly at: PlanPoint;
  readonly widthM: number;
  /** Turned about its middle, degrees clockwise, above -180 to 180. */
  readonly turnDeg: number;
}

/** Largest picture that is taken, bytes and dots. */
export const PICTURE_BYTES_MAX = 30e6;
const PICTURE_PIXELS_MAX = 60e6;

/** Widths a picture may be given, m. */
const PICTURE_WIDTH_MIN_M = 1;
const PICTURE_WIDTH_MAX_M = 1000;

type Placed = Pick<UnderlaidPicture, 'at' | 'widthM'>;

/**
 * The picture stretched so that two points of the plan, as it lies now, come to be `lengthM` apart; the first stays where
 * it is. `null` when the points are the same or the width would be out of bounds.
 */
export function scaledByLength<T extends Placed>(
  picture: T,
  from: PlanPoint,
  to: PlanPoint,
  lengthM: number,
): T | null {
  const now = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(now > 0) || !(lengthM > 0)) return null;
  const factor = lengthM / now;
  const widthM = picture.widthM * factor;
  if (widthM < PICTURE_WIDTH_MIN_M || widthM > PICTURE_WIDTH_MAX_M) return null;
  const at: PlanPoint = [
    toGrain(from[0] + (picture.at[0] - from[0]) * factor),
    toGrain(from[1] + (picture.at[1] - from[1]) * factor),
  ];
  return { ...picture, at, widthM };
}

/** Where a canvas has to draw it: the middle in dots, the size, and the corner counted from the middle. */
export function pictureOnCanvas(
  { at, widthM, shape, turnDeg }: Pick<UnderlaidPicture, 'at' | 'widthM' | 'shape' | 'turnDeg'>,
  scale: PlanScale,
): Record<'x' | 'y' | 'width' | 'height' | 'offsetX' | 'offsetY' | 'rotation', number> {
  const heightM = widthM * shape;
  const [x, y] = toPx(scale, [at[0] + widthM / 2, at[1] + heightM / 2]);
  const [width, height] = [widthM * scale.pxPerM, heightM * scale.pxPerM];
  return { x, y, width, height, offsetX: width / 2, offsetY: height / 2, rotation: turnDeg };
}

/** The picture turned to `turnDeg`, taken into -180 to 180 without the former: 270 is a quarter to the left. */
export function turnedTo<T>(picture: T, turnDeg: number): T & { turnDeg: number } {
  return { ...picture, turnDeg: 180 - ((((180 - turnDeg) % 360) + 360) % 360) };
}

/** Loads a file as a picture without letting it leave the browser. @throws InputError: too large, or no picture */
export async function openPicture(file: File, plotWidthM: number): Promise<UnderlaidPicture> {
  checkSize(file, PICTURE_BYTES_MAX);
  const url = URL.createObjectURL(file);
  const image = new Image();
  image.src = url;
  try {
    await image.decode();
  } catch {
    throw new InputError(t`${file.name} could not be opened as a picture; JPEG, PNG and WebP can.`);
  } finally {
    URL.revokeObjectURL(url);
  }
  const pixels = image.naturalWidth * image.naturalHeight;
  if (pixels === 0 || pixels > PICTURE_PIXELS_MAX) {
    throw new InputError(
      t`${file.name} has ${formatCount(image.naturalWidth)} by ${formatCount(image.naturalHeight)} dots; at most ${formatCount(PICTURE_PIXELS_MAX)} in all are taken.`,
    );
  }
  return {
    name: file.name,
    image,
    shape: image.naturalHeight / image.naturalWidth,
    at: [0, 0],
    widthM: plotWidthM,
    turnDeg: 0,
  };
}
