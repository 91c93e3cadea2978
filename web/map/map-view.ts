import type { FeatureCollection } from 'geojson';
import * as maplibregl from 'maplibre-gl';
import 'maplibre-gl/dist/maplibre-gl.css';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import { graticuleLines, graticuleStep, grownBox, type Box } from './graticule.ts';
import { MARK_IMAGES, MARK_PIXEL_RATIO, drawMark } from './mark-images.ts';
import { EMPTY, mapPaint, mapStyle, type MapSources } from './map-style.ts';
import type { MapPalette } from './palette.ts';

maplibregl.setWorkerUrl(workerUrl);

/** How far around the pack's box the map may be moved, as a share of its size. */
const ROOM = 0.6;
const FIT_PADDING_PX = 18;
const MAX_ZOOM = 13;

export interface MapViewOptions {
  readonly container: HTMLElement;
  readonly palette: MapPalette;
  readonly box: Box;
  readonly sources: Omit<MapSources, 'graticule'>;
  /** Two fingers move the map, one scrolls the page. */
  readonly coarsePointer: boolean;
}

/** What the frame around the map needs after each move. */
export interface MapFrame {
  readonly box: Box;
  readonly zoom: number;
  readonly lat: number;
}

/** The drawn map. The only class that touches MapLibre; the component around it speaks in stations and places. */
export class MapView {
  readonly #map: maplibregl.Map;
  readonly #box: Box;
  #palette: MapPalette;

  /** @throws Error when the browser can't draw (no WebGL 2) */
  constructor({ container, palette, box, sources, coarsePointer }: MapViewOptions) {
    this.#palette = palette;
    this.#box = box;
    const step = graticuleStep(Math.max(box[2] - box[0], box[3] - box[1]));
    const graticule = graticuleLines(grownBox(box, 2), step);
    this.#map = new maplibregl.Map({
      container,
      style: mapStyle(palette, { ...sources, graticule }),
      bounds: [...box] as [number, number, number, number],
      fitBoundsOptions: { padding: FIT_PADDING_PX },
      maxBounds: [...grownBox(box, ROOM)] as [number, number, number, number],
      maxZoom: MAX_ZOOM,
      attributionControl: false,
      dragRotate: false,
      pitchWithRotate: false,
      touchPitch: false,
      keyboard: false,
      fadeDuration: 0,
      renderWorldCopies: false,
      cooperativeGestures: coarsePointer,
      canvasContextAttributes: { preserveDrawingBuffer: true },
    });
    this.#map.touchZoomRotate.disableRotation();
    if (!coarsePointer) this.#map.scrollZoom.disable();
    const canvas = this.#map.getCanvas();
    canvas.tabIndex = -1;
    canvas.setAttribute('aria-hidden', 'true');
    canvas.removeAttribute('role');
    this.#map.setMissingStyleImageResolver((id) => this.#addImage(id));
  }

  #addImage(name: string): void {
    const image = drawMark(name, this.#palette);
    if (image && !this.#map.hasImage(name)) this.#map.addImage(name, image, { pixelRatio: MARK_PIXEL_RATIO });
  }

  #whenStyled(work: () => void): void {
    if (this.#map.isStyleLoaded() || this.#map.getSource('stations')) work();
    else this.#map.once('style.load', work);
  }

  /** New data for one source. */
  setData(source: keyof MapSources, data: FeatureCollection | null): void {
    this.#whenStyled(() => {
      this.#map.getSource<maplibregl.GeoJSONSource>(source)?.setData(data ?? EMPTY);
    });
  }

  /** Ring around a station; `null` takes it off. */
  setRing(ring: 'hovered' | 'selected', stationId: string | null): void {
    this.#whenStyled(() => this.#map.setFilter(`ring-${ring}`, ['==', ['get', 'id'], stationId ?? '']));
  }

  /** Other colours, nothing else. */
  restyle(palette: MapPalette): void {
    this.#palette = palette;
    this.#whenStyled(() => {
      for (const [layer, paint] of Object.entries(mapPaint(palette))) {
        for (const [property, value] of Object.entries(paint)) {
          this.#map.setPaintProperty(layer, property as never, value as never);
        }
      }
      for (const name of MARK_IMAGES) {
        const image = drawMark(name, palette);
        if (image && this.#map.hasImage(name)) this.#map.updateImage(name, image);
      }
    });
  }

  on(event: 'load' | 'idle' | 'move' | 'resize', listener: () => void): void {
    this.#map.on(event, listener);
  }

  /** Clicks and pointer moves in px of the map; `null` when the pointer leaves. */
  onPointer(
    kind: 'click' | 'mousemove',
    listener: (x: number, y: number, at: { lat: number; lon: number }) => void,
  ): void {
    this.#map.on(kind, ({ point, lngLat }) =>
      listener(point.x, point.y, { lat: lngLat.lat, lon: lngLat.lng }),
    );
  }

  project(lon: number, lat: number): { x: number; y: number } {
    return this.#map.project([lon, lat]);
  }

  frame(): MapFrame {
    const bounds = this.#map.getBounds();
    return {
      box: [bounds.getWest(), bounds.getSouth(), bounds.getEast(), bounds.getNorth()],
      zoom: this.#map.getZoom(),
      lat: this.#map.getCenter().lat,
    };
  }

  zoomBy(levels: number): void {
    this.#map.easeTo({ zoom: this.#map.getZoom() + levels, duration: 200 });
  }

  panBy(x: number, y: number): void {
    this.#map.panBy([x, y], { duration: 150 });
  }

  /** The whole pack again. */
  fit(): void {
    this.#map.fitBounds([...this.#box] as [number, number, number, number], {
      padding: FIT_PADDING_PX,
      duration: 300,
    });
  }

  /** Moves only as far as needed to show a point that lies outside or at the rim. */
  reveal(lon: number, lat: number): void {
    const { x, y } = this.project(lon, lat);
    const { clientWidth, clientHeight } = this.#map.getContainer();
    const rim = 24;
    if (x > rim && y > rim && x < clientWidth - rim && y < clientHeight - rim) return;
    this.#map.easeTo({ center: [lon, lat], duration: 300 });
  }

  /** The wheel zooms only while the reader is in the map, so that it never catches the page's scrolling. */
  setWheelZoom(on: boolean): void {
    if (on) this.#map.scrollZoom.enable();
    else this.#map.scrollZoom.disable();
  }

  /** The picture for print, drawn at once with another palette if one is given. */
  picture(palette?: MapPalette): string {
    const usual = this.#palette;
    if (palette) this.restyle(palette);
    this.#map.redraw();
    const url = this.#map.getCanvas().toDataURL('image/png');
    if (palette) this.restyle(usual);
    return url;
  }

  remove(): void {
    this.#map.remove();
  }
}
