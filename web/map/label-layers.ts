import type { LayerSpecification, SymbolLayerSpecification } from 'maplibre-gl';
import { mixColors, type MapPalette } from './palette.ts';

/**
 * Fonts of the page, drawn by the browser itself: without a glyph server MapLibre takes these as CSS families. The name
 * holds a digit, so it must carry its own quotes. The first family of the slanted face exists nowhere: MapLibre reads
 * the style from that name.
 */
export const TEXT_FONT = ["'Source Serif 4 Variable'", 'Georgia', 'serif'];
export const ITALIC_FONT = ["'Almanac Italic'", ...TEXT_FONT];

/** Where a town's name may go, best first: beside its dot, else a little farther off, where stations crowd around it. */
const TOWN_ANCHORS = [0.55, 1.5, 2.6].flatMap((away): (string | [number, number])[] => [
  ...['left', [away, 0] as [number, number]],
  ...['right', [-away, 0] as [number, number]],
  ...['top', [0, away] as [number, number]],
  ...['bottom', [0, -away] as [number, number]],
  ...['top-left', [away, away] as [number, number]],
  ...['bottom-left', [away, -away] as [number, number]],
  ...['top-right', [-away, away] as [number, number]],
  ...['bottom-right', [-away, -away] as [number, number]],
]) as NonNullable<SymbolLayerSpecification['layout']>['text-variable-anchor-offset'];

/** Layers of names, less important first; source `labels` has `kind` "town", "hill", "water", "river", "island" and `rank`. */
export function labelLayers(): LayerSpecification[] {
  const natural = (id: string, kinds: string[], size: number, minzoom: number): LayerSpecification => ({
    id,
    type: 'symbol',
    source: 'labels',
    minzoom,
    filter: ['in', ['get', 'kind'], ['literal', kinds]],
    layout: {
      'text-field': ['get', 'name'],
      'text-font': ITALIC_FONT,
      'text-size': size,
      'text-letter-spacing': 0.04,
      'text-max-width': 7,
    },
  });
  return [
    {
      id: 'river-names',
      type: 'symbol',
      source: 'land',
      minzoom: 7.5,
      filter: ['==', ['get', 'kind'], 'river'],
      layout: {
        'symbol-placement': 'line',
        'symbol-spacing': 400,
        'text-field': ['get', 'name'],
        'text-font': ITALIC_FONT,
        'text-size': 12,
        'text-letter-spacing': 0.06,
        'text-offset': [0, -0.7],
        'text-max-angle': 30,
      },
    },
    natural('small-names', ['island', 'water'], 12, 8),
    natural('hill-names', ['hill'], 14, 5),
    {
      id: 'town-dots',
      type: 'circle',
      source: 'labels',
      filter: ['==', ['get', 'kind'], 'town'],
    },
    {
      id: 'town-names',
      type: 'symbol',
      source: 'labels',
      filter: ['==', ['get', 'kind'], 'town'],
      layout: {
        'text-field': ['get', 'name'],
        'text-font': TEXT_FONT,
        'text-size': [
          'interpolate',
          ['linear'],
          ['zoom'],
          6,
          ['match', ['get', 'rank'], 1, 13.5, 2, 11.5, 10.5],
          8,
          ['match', ['get', 'rank'], 1, 17, 2, 14.5, 13],
        ],
        'text-variable-anchor-offset': TOWN_ANCHORS,
        'text-justify': 'auto',
        'text-padding': 3,
        'symbol-sort-key': ['get', 'rank'],
      },
    },
  ];
}

interface LabelColors {
  readonly ink: string;
  readonly paper: string;
  readonly land: string;
  readonly water: string;
  readonly palette: MapPalette;
}

/** Paint of the layers of names. */
export function labelPaint({
  ink,
  land,
  water,
  palette,
}: LabelColors): Record<string, Record<string, unknown>> {
  const soft = mixColors(ink, land, 0.3);
  const watery = mixColors(palette.cold[4], ink, 0.35);
  const halo = { 'text-halo-color': land, 'text-halo-width': 1.4, 'text-halo-blur': 0.4 };
  return {
    'river-names': { 'text-color': watery, ...halo },
    'small-names': { 'text-color': watery, ...halo, 'text-halo-color': mixColors(land, water, 0.5) },
    'hill-names': { 'text-color': soft, ...halo },
    'town-dots': {
      'circle-radius': ['match', ['get', 'rank'], 1, 3, 2, 2.4, 1.9],
      'circle-color': ink,
      'circle-stroke-color': land,
      'circle-stroke-width': 1,
    },
    'town-names': { 'text-color': ink, ...halo, 'text-halo-width': 1.8 },
  };
}
