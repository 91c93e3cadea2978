import type { Paper } from '../../state/sheet-text.ts';
import { fontFaces } from './font-faces.ts';
import { PAPER_MM } from './print-sheet.ts';

/** Dots to the inch of the picture, as printers have them. */
const DPI = 300;
const MM_PER_INCH = 25.4;
const CSS_DPI = 96;

/** Size of the picture, dots. */
export function pictureSize(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height } = PAPER_MM[paper];
  const dots = (mm: number): number => Math.round((mm / MM_PER_INCH) * DPI);
  return { width: dots(width), height: dots(height) };
}

/** The sheet as a PNG at print resolution. @throws Error when the browser can't draw it */
export async function sheetPicture(sheet: HTMLElement, paper: Paper): Promise<Blob> {
  const [{ domToCanvas }, cssText] = await Promise.all([import('modern-screenshot'), fontFaces()]);
  const { width, height } = pictureSize(paper);
  const drawn = await domToCanvas(sheet, {
    scale: DPI / CSS_DPI,
    backgroundColor: '#ffffff',
    font: { cssText },
  });
  const exact = document.createElement('canvas');
  [exact.width, exact.height] = [width, height];
  const pen = exact.getContext('2d')!;
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, width, height);
  pen.drawImage(drawn, 0, 0, width, height);
  return new Promise((resolve, reject) =>
    exact.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('The picture was not made.'))),
      'image/png',
    ),
  );
}
