import { contours } from 'd3-contour';
import type { Position } from 'geojson';
import type { Surface } from '../state/ports.ts';
import type { PaintClass } from './paint-classes.ts';
import type { CellLayout, SurfacePlan } from './surface-plan.ts';

/** Closed lines round everything at or beyond an edge; holes are among the rings, so fill them even-odd. Degrees. */
export interface BandArea {
  readonly paintClass: PaintClass;
  /** Value at the edge in the scale's own terms, `null` for an overlay. */
  readonly edge: number | null;
  readonly rings: readonly (readonly Position[])[];
}

/**
 * Areas to paint one over the other over a ground of the scale's first class: each class from its lower edge up, then the
 * overlays. Edges run between the cells, by marching squares on the logarithm.
 */
export function contourBands({ layout, scale, logs, overlays }: SurfacePlan): readonly BandArea[] {
  const generator = contours().size([layout.columns, layout.rows]).smooth(true);
  const area = (values: Float32Array, at: number, paintClass: PaintClass, edge: number | null): BandArea => {
    // Marching squares only reads the values; its types know plain arrays alone.
    const { coordinates } = generator.contour(values as unknown as number[], at);
    return { paintClass, edge, rings: coordinates.flat().map((ring) => inDegrees(ring, layout)) };
  };
  return [
    ...scale.edges.map((edge, k) => area(logs, Math.log(edge), scale.classes[k + 1], edge)),
    ...overlays.map(({ field, paintClass }) => area(field, 0, paintClass, null)),
  ];
}

/** Rings round the land as the cells know it, for maps without outlines. */
export function landRings(surface: Surface): readonly (readonly Position[])[] {
  const { columns, rows, states } = surface;
  const land = Array.from(states, (state) => (state === 0 ? -1 : 1));
  const { coordinates } = contours().size([columns, rows]).contour(land, 0);
  return coordinates.flat().map((ring) => inDegrees(ring, surface));
}

/** From cells counted from the corner of the first one to degrees. */
function inDegrees(ring: readonly Position[], layout: CellLayout): readonly Position[] {
  return ring.map(([x, y]) => [
    layout.west + (x - 0.5) * layout.stepLonDeg,
    layout.south + (y - 0.5) * layout.stepLatDeg,
  ]);
}
