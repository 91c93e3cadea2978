import type { Surface } from '../state/ports.ts';
import {
  BEYOND,
  NO_ANSWER,
  PERIOD_SCALE,
  RATIO_SCALE,
  WHERE_SCALE,
  type PaintClass,
  type PaintScale,
} from './paint-classes.ts';
import { commonClaim, type SurfaceView } from './surface-view.ts';
import { tellingCells } from './telling-cells.ts';

/** Where the cells lie: see {@link Surface}. */
export type CellLayout = Pick<Surface, 'columns' | 'rows' | 'west' | 'south' | 'stepLonDeg' | 'stepLatDeg'>;

/** An area painted over the classes: where its field is above 0. */
export interface Overlay {
  readonly paintClass: PaintClass;
  readonly field: Float32Array;
}

/** What is painted, ready for cells and for bands alike. */
export interface SurfacePlan {
  readonly layout: CellLayout;
  readonly scale: PaintScale;
  /** Natural logarithm of the classed value in every cell, carried from the land over the shore; NaN if nothing is answered. */
  readonly logs: Float32Array;
  readonly overlays: readonly Overlay[];
}

/** Beyond what is claimed a period counts for a band's course up to this many times the claim, so that bands stay smooth. */
const CUT = 2;

/** From answers to what is painted. */
export function surfacePlan(view: SurfaceView): SurfacePlan {
  const { surface } = view;
  const { telling, answered } = tellingCells(surface);
  const cells = telling.length;
  const logs = new Float32Array(cells);
  const beyond = new Float32Array(cells);
  const missing = new Float32Array(cells);
  const valueOf = cellValue(view);
  for (let i = 0; i < cells; i++) {
    const from = answered[i];
    const { log, over } = from === -1 ? { log: NaN, over: -1 } : valueOf(from);
    logs[i] = log;
    beyond[i] = over;
    const land = telling[i];
    missing[i] = land !== -1 && hasAnswer(view, land) ? -1 : 1;
  }
  return {
    layout: surface,
    scale: { periods: PERIOD_SCALE, difference: RATIO_SCALE, where: WHERE_SCALE }[view.mode],
    logs,
    overlays: [
      { paintClass: BEYOND[view.mode], field: beyond },
      { paintClass: NO_ANSWER, field: missing },
    ],
  };
}

function hasAnswer(view: SurfaceView, cell: number): boolean {
  const answers = view.mode === 'difference' ? [view.surface, view.against] : [view.surface];
  return answers.every(({ states, periods }) => states[cell] === 1 && !Number.isNaN(periods[cell]));
}

/** For an answered cell the logarithm of its value, and above 0 how far it lies beyond what can be told. */
function cellValue(view: SurfaceView): (cell: number) => { log: number; over: number } {
  const { surface } = view;
  const cut = (s: Surface, cell: number, claim: number): number => Math.min(s.periods[cell], CUT * claim);
  if (view.mode === 'periods') {
    return (cell) => {
      const claim = surface.longestClaims[cell];
      const period = cut(surface, cell, claim);
      return { log: Math.log(period), over: Math.log(period / claim) };
    };
  }
  if (view.mode === 'where') {
    const wanted = view.atLeastWinters;
    return (cell) => {
      const claim = surface.longestClaims[cell];
      const period = cut(surface, cell, claim);
      // A record long enough to say yes or no leaves nothing untold.
      return { log: Math.log(period / wanted), over: claim >= wanted ? -1 : Math.log(period / claim) };
    };
  }
  const { against } = view;
  return (cell) => {
    if (!hasAnswer(view, cell)) return { log: 0, over: -1 };
    const claim = commonClaim(surface, against, cell);
    const [a, b] = [cut(surface, cell, claim), cut(against, cell, claim)];
    // Between the two cuts the ratio is of what is told, and the colder of the two decides whether anything is.
    const log = Math.log(Math.min(a, claim) / Math.min(b, claim));
    return { log, over: Math.log(Math.min(a, b) / claim) };
  };
}
