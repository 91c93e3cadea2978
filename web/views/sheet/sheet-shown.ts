import type { StripRow } from '../../charts/year-strip.ts';
import type { ShownSurface } from '../../map/shown-surface.ts';
import type { SheetLink } from './sheet-link.ts';
import type { SheetMapPicture } from './sheet-map.ts';
import type { SheetPlan } from './sheet-plan.ts';

/** Pictures of the sheet beside its words; `null` for what has not come or can't be drawn. */
export interface SheetShown {
  readonly map: SheetMapShown | null;
  /** Why there is no map. */
  readonly noMap: string;
  readonly plan: SheetPlan | null;
  readonly strip: {
    readonly title: string;
    readonly rows: readonly StripRow[];
    readonly label: string;
  } | null;
  readonly link: SheetLink | null;
}

/** The map with what its legend tells. */
export interface SheetMapShown {
  readonly picture: SheetMapPicture;
  readonly title: string;
  readonly surface: ShownSurface | null;
}
