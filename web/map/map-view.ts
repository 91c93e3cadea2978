import type { FeatureCollection } from 'geojson';
import * as maplibregl from 'maplibre-gl';
import './map-base.css';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url';
import { graticuleLines, graticuleStep, grownBox, type Box } from './graticule.ts';
import { mapLocale } from './map-locale.ts';
import { MARK_IMAGES, MARK_PIXEL_RATIO, drawMark } from './mark-images.ts';
import { EMPTY, mapPaint, mapStyle, type MapSources } from './map-style.ts';
import type { MapPalette } from './palette.ts';

maplibregl.setWorkerUrl(workerUrl);

/** How far around the pack's box the map may be moved, as a share of its size. */
const ROOM = 0.6;
const FIT_PADDING_PX = 18;
const MAX_ZOOM = 13;
/** How far around the view a picture is painted, as a share of its longer side. */
const PICTURE_MARGIN = 0.1;

type Corner = [lon: number, lat: number];
/** From the north-west clockwise, as MapLibre wants them. */
function corners([west, south, east, north]: Box): [Corner, Corner, Corner, Corner] {
  return [
    [west, north],
    [east, north],
    [east, south],
    [west, south],
  ];
}

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

/** A picture between the land and what stands on it: painted by others, for any part of the map and any colours. */
export interface MapPicture {
  readonly canvas: HTMLCanvasElement;
  /** Paints the canvas for a part of the map; `ratio` canvas px for one px on screen. */
  paint(box: Box, widthPx: number, heightPx: number, ratio: number, palette: MapPalette): void;
}

/** The drawn map. The only class that touches MapLibre; the component around it speaks in stations and places. */
export class MapView {
  readonly #map: maplibregl.Map;
  readonly #box: Box;
  #palette: MapPalette;
  #picture: MapPicture | null = null;
  /** What the picture covers now. */
  #painted: { readonly box: Box; readonly zoom: number } | null = null;

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
      locale: mapLocale(),
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
      this.#repaintPicture();
    });
  }

  /** Lays a picture over the land; called again, or after its content changed, it is painted anew. `null` takes it off. */
  setPicture(picture: MapPicture | null): void {
    this.#whenStyled(() => {
      const shown = this.#map.getLayer('picture') !== undefined;
      this.#picture = picture;
      if (picture && !shown) {
        const box = this.#paintPicture()!;
        this.#map.addSource('picture', {
          type: 'canvas',
          canvas: picture.canvas,
          coordinates: corners(box),
          animate: false,
        });
        const paint = { 'raster-fade-duration': 0 };
        this.#map.addLayer({ id: 'picture', type: 'raster', source: 'picture', paint }, 'rivers');
        this.#map.on('move', () => this.#followMove(false));
        this.#map.on('moveend', () => this.#followMove(true));
        this.#map.on('resize', () => this.#repaintPicture());
      } else if (picture) this.#repaintPicture();
      if (this.#map.getLayer('picture'))
        this.#map.setLayoutProperty('picture', 'visibility', picture ? 'visible' : 'none');
    });
  }

  /** Paints the part in view and a margin around, so that a small move shows no edge. Returns what is covered. */
  #paintPicture(): Box | null {
    if (!this.#picture) return null;
    const { clientWidth, clientHeight } = this.#map.getContainer();
    const margin = Math.round(PICTURE_MARGIN * Math.max(clientWidth, clientHeight));
    const [west, north] = this.#map.unproject([-margin, -margin]).toArray();
    const [east, south] = this.#map.unproject([clientWidth + margin, clientHeight + margin]).toArray();
    const ratio = this.#map.getPixelRatio();
    const px = (length: number): number => Math.round((length + 2 * margin) * ratio);
    const box: Box = [west, south, east, north];
    this.#picture.paint(box, px(clientWidth), px(clientHeight), ratio, this.#palette);
    this.#painted = { box, zoom: this.#map.getZoom() };
    return box;
  }

  #repaintPicture(): void {
    const source = this.#map.getSource<maplibregl.CanvasSource>('picture');
    const box = source && this.#paintPicture();
    if (!source || !box) return;
    source.setCoordinates(corners(box));
    // Playing takes the canvas over once; pausing at once leaves the map at rest.
    source.play();
    source.pause();
  }

  #followMove(ended: boolean): void {
    if (!this.#painted) return;
    const { box, zoom } = this.#painted;
    const [west, south, east, north] = this.frame().box;
    const inside = west >= box[0] && south >= box[1] && east <= box[2] && north <= box[3];
    const zoomed = Math.abs(this.#map.getZoom() - zoom);
    if (!inside || zoomed > 1 || (ended && zoomed > 0)) this.#repaintPicture();
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
