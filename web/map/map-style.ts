import type { FeatureCollection } from 'geojson';
import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import { mixColors, type MapPalette } from './palette.ts';
import { labelLayers, labelPaint } from './label-layers.ts';

/** Distance from the shore (px, close up) and strength of each engraved line in the sea, as a share of ink. */
const WATERLINES = [
  { px: 2.5, share: 0.22 },
  { px: 5.5, share: 0.16 },
  { px: 9, share: 0.11 },
  { px: 13, share: 0.075 },
  { px: 17.5, share: 0.045 },
];

/** The lines close up on the shore when the map is small, where coves are too narrow for them. */
function waterlineGap(px: number): unknown {
  return ['interpolate', ['linear'], ['zoom'], 5, 0.5 * px, 6.5, px, 8, 2 * px];
}

const ROUND = { 'line-join': 'round', 'line-cap': 'round' } as const;
const ofKind = (kind: string) => ['==', ['get', 'kind'], kind] as ['==', unknown, string];

/** Paint of every layer for a palette, by layer id: what changes between light and dark, and only that. */
export function mapPaint(palette: MapPalette): Record<string, Record<string, unknown>> {
  const { ink, land, water, coast, accent, paper } = palette;
  const shore = mixColors(water, mixColors(coast, ink, 0.25), 0.9);
  return {
    sea: { 'background-color': water },
    graticule: { 'line-color': mixColors(water, ink, 0.13), 'line-width': 0.75 },
    ...Object.fromEntries(
      WATERLINES.map(({ px, share }, i) => [
        `waterline-${i}`,
        { 'line-color': mixColors(water, ink, share), 'line-width': 0.8, 'line-gap-width': waterlineGap(px) },
      ]),
    ),
    land: { 'fill-color': land, 'fill-antialias': true },
    hills: { 'fill-color': mixColors(land, ink, 0.055) },
    'hill-heights': { 'fill-color': ink, 'fill-opacity': 0.035 },
    contours: { 'line-color': mixColors(land, ink, 0.26), 'line-width': 0.6 },
    lakes: { 'fill-color': water },
    'lake-shores': { 'line-color': shore, 'line-width': 0.8 },
    rivers: {
      'line-color': mixColors(palette.cold[3], palette.inkSoft, 0.25),
      'line-width': ['interpolate', ['linear'], ['zoom'], 6, 0.6, 10, 1.5],
    },
    coast: { 'line-color': shore, 'line-width': 1.1 },
    ...labelPaint({ ink, paper, land, water, palette }),
    'ring-hovered': {
      'circle-color': 'transparent',
      'circle-radius': 11,
      'circle-stroke-color': ink,
      'circle-stroke-width': 1.25,
    },
    'ring-selected': {
      'circle-color': 'transparent',
      'circle-radius': 12,
      'circle-stroke-color': accent,
      'circle-stroke-width': 2.25,
    },
    stations: {},
    place: {},
  };
}

/** Layers from the bottom up, without paint. */
function bareLayers(): LayerSpecification[] {
  const area = (id: string, filter: unknown): LayerSpecification =>
    ({ id, type: 'fill', source: 'land', filter }) as LayerSpecification;
  const line = (id: string, filter: unknown): LayerSpecification =>
    ({ id, type: 'line', source: 'land', filter, layout: ROUND }) as LayerSpecification;
  return [
    { id: 'sea', type: 'background' },
    { id: 'graticule', type: 'line', source: 'graticule' },
    ...WATERLINES.map((_, i) => line(`waterline-${i}`, ofKind('land'))),
    area('land', ofKind('land')),
    area('hills', ofKind('hill')),
    area('hill-heights', ['all', ofKind('hill'), ['>=', ['coalesce', ['get', 'elevation_m'], 0], 200]]),
    line('contours', ofKind('hill')),
    line('rivers', ofKind('river')),
    area('lakes', ofKind('water')),
    line('lake-shores', ofKind('water')),
    line('coast', ofKind('land')),
    ...labelLayers(),
    { id: 'ring-hovered', type: 'circle', source: 'stations', filter: ['==', ['get', 'id'], ''] },
    { id: 'ring-selected', type: 'circle', source: 'stations', filter: ['==', ['get', 'id'], ''] },
    {
      id: 'stations',
      type: 'symbol',
      source: 'stations',
      layout: {
        'icon-image': ['get', 'icon'],
        'icon-size': ['interpolate', ['linear'], ['zoom'], 3, 0.5, 5, 0.7, 6.5, 0.85, 8, 1],
        'icon-padding': 0,
        'icon-allow-overlap': true,
        'symbol-sort-key': ['get', 'order'],
      },
    },
    {
      id: 'place',
      type: 'symbol',
      source: 'place',
      layout: { 'icon-image': 'place', 'icon-allow-overlap': true },
    },
  ];
}

export const EMPTY: FeatureCollection = { type: 'FeatureCollection', features: [] };

/** What the style is drawn from; everything is in memory, nothing is fetched. */
export interface MapSources {
  readonly land: FeatureCollection | null;
  readonly graticule: FeatureCollection;
  readonly labels: FeatureCollection;
  readonly stations: FeatureCollection;
  readonly place: FeatureCollection;
}

/** A whole MapLibre style with its data inside: no tiles, no glyphs, no sprite. */
export function mapStyle(palette: MapPalette, sources: MapSources): StyleSpecification {
  const paint = mapPaint(palette);
  const source = (data: FeatureCollection | null) => ({ type: 'geojson' as const, data: data ?? EMPTY });
  return {
    version: 8,
    // Colours change at once: a theme is not a journey, and the picture for print is taken in the same moment.
    transition: { duration: 0, delay: 0 },
    sources: {
      land: source(sources.land),
      graticule: source(sources.graticule),
      labels: source(sources.labels),
      stations: source(sources.stations),
      place: source(sources.place),
    },
    layers: bareLayers().map((layer) => ({ ...layer, paint: paint[layer.id] }) as LayerSpecification),
  };
}
