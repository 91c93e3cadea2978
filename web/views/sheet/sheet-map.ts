import type { MapView } from '../../map/map-view.ts';
import { readPalette } from '../../map/palette.ts';
import { metresPerPixel } from '../../map/scale-bar.ts';

/** The map as an image for paper. */
export interface SheetMapPicture {
  readonly url: string;
  /** Size of the map on screen, px. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Where the place lies in it, px; `null`: outside. */
  readonly at: { readonly x: number; readonly y: number } | null;
  /** Ground distance of one px there, m. */
  readonly mPerPx: number;
}

/**
 * A picture of the map as it lies now, in the colours of the sheet. Throws nothing: without a drawing there is none.
 * @param paper an element of the sheet, whose colours are read
 */
export function grabMap(
  view: MapView,
  paper: HTMLElement,
  { lat, lon }: { readonly lat: number; readonly lon: number },
): SheetMapPicture | null {
  try {
    const { box, zoom, lat: middle } = view.frame();
    const widthPx = ((box[2] - box[0]) / 360) * 512 * 2 ** zoom;
    const lower = view.project(box[2], box[1]);
    const at = view.project(lon, lat);
    const inside = at.x >= 0 && at.y >= 0 && at.x <= widthPx && at.y <= lower.y;
    return {
      url: view.picture(readPalette(paper)),
      ...{ widthPx, heightPx: lower.y, at: inside ? at : null },
      mPerPx: metresPerPixel(middle, zoom),
    };
  } catch {
    return null;
  }
}

/** How a picture fills a box: how much larger it is drawn, and where its left upper corner comes to lie, px. */
export interface Filled {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
}

/** Fills a box with the picture, cut where it must be, with the place as near to the middle as the picture allows. */
export function fillBox(
  { widthPx, heightPx, at }: Pick<SheetMapPicture, 'widthPx' | 'heightPx' | 'at'>,
  boxWidth: number,
  boxHeight: number,
): Filled {
  const scale = Math.max(boxWidth / widthPx, boxHeight / heightPx);
  const middle = at ?? { x: widthPx / 2, y: heightPx / 2 };
  const place = (point: number, box: number, length: number): number =>
    Math.min(0, Math.max(box - length * scale, box / 2 - point * scale));
  return { scale, left: place(middle.x, boxWidth, widthPx), top: place(middle.y, boxHeight, heightPx) };
}
