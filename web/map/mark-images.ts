import { markPath } from '../charts/mark-paths.ts';
import { LEGEND_CLASSES } from '../charts/period-classes.ts';
import type { MapPalette } from './palette.ts';
import { markImage } from './station-features.ts';

/** Images are drawn at twice the size for sharp marks on fine screens. */
export const MARK_PIXEL_RATIO = 2;
const BOX_PX = 22;
const RADIUS_PX = 6.2;

export const PLACE_IMAGE = 'place';
const WAITING_IMAGE = markImage('waiting');

/** Names of all images the map uses. */
export const MARK_IMAGES: readonly string[] = [
  ...LEGEND_CLASSES.map(({ id }) => markImage(id)),
  WAITING_IMAGE,
  PLACE_IMAGE,
];

/** Draws one image by name; `null` for a name that isn't ours. */
export function drawMark(name: string, palette: MapPalette): ImageData | null {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = BOX_PX * MARK_PIXEL_RATIO;
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) return null;
  pen.scale(MARK_PIXEL_RATIO, MARK_PIXEL_RATIO);
  pen.translate(BOX_PX / 2, BOX_PX / 2);
  pen.lineJoin = 'round';
  if (name === PLACE_IMAGE) drawPlace(pen, palette);
  else if (name === WAITING_IMAGE) drawWaiting(pen, palette);
  else if (!drawClass(name, pen, palette)) return null;
  return pen.getImageData(0, 0, canvas.width, canvas.height);
}

function drawClass(name: string, pen: CanvasRenderingContext2D, palette: MapPalette): boolean {
  const shown = LEGEND_CLASSES.find(({ id }) => markImage(id) === name);
  if (!shown) return false;
  const outline = new Path2D(markPath(shown.shape, RADIUS_PX));
  pen.strokeStyle = palette.land;
  pen.lineWidth = 3.6;
  pen.stroke(outline);
  pen.fillStyle = shown.ramp === 0 ? palette.paper : palette.cold[shown.ramp - 1];
  pen.fill(outline);
  if (shown.shape === 'hatched') hatch(pen, outline, palette);
  pen.strokeStyle = palette.ink;
  pen.lineWidth = shown.shape === 'ring' ? 1.8 : 1.1;
  pen.stroke(outline);
  return true;
}

function hatch(pen: CanvasRenderingContext2D, outline: Path2D, palette: MapPalette): void {
  pen.save();
  pen.clip(outline);
  pen.strokeStyle = palette.inkSoft;
  pen.lineWidth = 1;
  pen.beginPath();
  for (let at = -12; at <= 12; at += 3) {
    pen.moveTo(at - 8, 8);
    pen.lineTo(at + 8, -8);
  }
  pen.stroke();
  pen.restore();
}

function drawWaiting(pen: CanvasRenderingContext2D, palette: MapPalette): void {
  pen.beginPath();
  pen.arc(0, 0, 3, 0, 2 * Math.PI);
  pen.fillStyle = palette.land;
  pen.strokeStyle = palette.ink;
  pen.lineWidth = 1.5;
  pen.fill();
  pen.stroke();
}

/** The chosen place: a full dot, so that it still reads inside the ring of the station that answers for it. */
function drawPlace(pen: CanvasRenderingContext2D, palette: MapPalette): void {
  const dot = new Path2D(markPath('circle', 6));
  pen.strokeStyle = palette.paper;
  pen.lineWidth = 4;
  pen.stroke(dot);
  pen.fillStyle = palette.accent;
  pen.fill(dot);
}
