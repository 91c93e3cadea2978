import type { FeatureCollection } from 'geojson';
import type { Snippet } from 'svelte';
import type { TemperatureUnit } from '../format/unit.ts';
import type { Box } from './graticule.ts';
import type { MapFrame, MapView } from './map-view.ts';
import type { MapTown } from './place-names.ts';
import type { MapPoint, PointAnswer, ShownSurface } from './shown-surface.ts';
import type { MapPeriod, MapStation } from './station-features.ts';

/** What the map is given and what it tells. */
export interface MapProps {
  readonly land: FeatureCollection | null;
  readonly towns: readonly MapTown[];
  readonly stations: readonly MapStation[];
  /** Answers for the type and level shown, by station; `null` while they are worked out. */
  readonly periods: ReadonlyMap<string, MapPeriod> | null;
  readonly bbox: Box;
  readonly selectedId: string | null;
  readonly place?: { readonly lat: number; readonly lon: number; readonly label: string } | null;
  readonly theme: 'light' | 'dark';
  readonly unit: TemperatureUnit;
  readonly title: string;
  readonly span: string;
  /** Winters behind the marks, where the surface is of others. */
  readonly stationSpan?: string;
  /** The cold that counts, for the legend: `20 °F for 4 h`. */
  readonly cold?: string;
  /** Return periods over the land; `null` until they have come. */
  readonly surface?: ShownSurface | null;
  readonly surfaceWorking?: boolean;
  /** What is known of the point that was told by `onpointed`. */
  readonly pointAnswer?: PointAnswer | null;
  readonly attribution: string;
  readonly invented?: boolean;
  /** Ring a station that something else points at, such as the list. */
  readonly hoveredId?: string | null;
  readonly onselect: (stationId: string) => void;
  readonly onpoint?: (point: MapPoint) => void;
  /** The reader points at land beside any station, or no longer does. */
  readonly onpointed?: (point: MapPoint | null) => void;
  /** Once the map is drawn, and with `null` when it goes. */
  readonly onview?: (view: MapView | null) => void;
  /** What others draw over the map; it is drawn anew whenever the map has moved. */
  readonly marks?: Snippet<[view: MapView, frame: MapFrame]>;
}
