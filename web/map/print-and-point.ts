import type { FeatureCollection, Point } from 'geojson';
import { readPalette, type MapPalette } from './palette.ts';

/** The chosen place as a source of one point or none. */
export function pointFeature(
  place: { readonly lat: number; readonly lon: number } | null,
): FeatureCollection<Point> {
  return {
    type: 'FeatureCollection',
    features: place
      ? [
          {
            type: 'Feature',
            properties: {},
            geometry: { type: 'Point', coordinates: [place.lon, place.lat] },
          },
        ]
      : [],
  };
}

/** The light palette whatever the page shows now: paper is light. Flips the page's theme for one style reading. */
export function lightPalette(host: HTMLElement): MapPalette {
  const root = host.ownerDocument.documentElement;
  const theme = root.dataset.theme;
  root.dataset.theme = 'light';
  const palette = readPalette(host);
  if (theme === undefined) delete root.dataset.theme;
  else root.dataset.theme = theme;
  return palette;
}
