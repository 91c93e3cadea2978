import type { PlanPoint, Yard } from '../../../analysis/spot/yard.ts';
import { planScaleBar, type LengthUnit } from '../../yard/lengths.ts';
import { readPlanPalette } from '../../yard/plan-palette.ts';
import { planScale } from '../../yard/plan-scale.ts';

/** The yard as an image for paper, north up. */
export interface SheetPlan {
  readonly url: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bar: { readonly px: number; readonly label: string };
}

/** Size it is drawn at, px, and dots for each of them: 270 to the inch at the width it has on paper. */
const WIDTH_PX = 300;
const HEIGHT_MOST_PX = 300;
const DOTS = 4;

/** Draws the yard with the tree in it, in the colours of the sheet, without the field of degrees. */
export async function drawPlan(
  yard: Yard,
  tree: PlanPoint,
  paper: HTMLElement,
  lengthUnit: LengthUnit,
): Promise<SheetPlan> {
  const { PlanView } = await import('../../yard/plan-view.ts');
  const scale = planScale(yard.widthM, yard.depthM, WIDTH_PX, HEIGHT_MOST_PX);
  const palette = readPlanPalette(paper);
  const view = new PlanView(document.createElement('div'));
  try {
    view.size(scale);
    view.ground({ scale, palette, plot: yard, field: null, picture: null });
    view.things({ scale, palette, yard, selectedId: null, wrongIds: [], touch: false, busy: false });
    view.marks({ scale, palette, best: [], chosen: tree, cursor: null, sketch: [] });
    const { widthPx, heightPx } = scale;
    return { url: view.picture(DOTS), widthPx, heightPx, bar: planScaleBar(scale.pxPerM, lengthUnit, 80) };
  } finally {
    view.remove();
  }
}
