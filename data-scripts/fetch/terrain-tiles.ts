import { decode } from 'fast-png';

/** Base address of the open bucket of elevation tiles in the Terrarium encoding: `Z/X/Y.png` below it. */
export const DEFAULT_TILES = 'https://elevation-tiles-prod.s3.amazonaws.com/terrarium/';

/** What a pack with elevations from these tiles must say about them. */
export const TERRAIN_TILES_SOURCE = {
  name: 'Terrain Tiles (AWS open data; compiled by Mapzen and Tilezen from open elevation data)',
  licence:
    'Open data of many publishers, most of it in the public domain, each under its own terms; credit is required.',
  attribution:
    'ArcticDEM: DigitalGlobe, Inc., and National Science Foundation awards 1043681, 1559691 and 1542736. Australia: © Commonwealth of Australia (Geoscience Australia) 2017. Austria: © offene Daten Österreichs, Digitales Geländemodell (DGM) Österreich. Canada: Open Government Licence, Canada. Europe: produced using Copernicus data and information funded by the European Union, EU-DEM layers. Global ETOPO1: U.S. National Oceanic and Atmospheric Administration. Mexico: INEGI, Continental relief, 2016. New Zealand: © 2011 Crown copyright, Land Information New Zealand. Norway: © Kartverket. United Kingdom: © Environment Agency 2015. United States 3DEP and global GMTED2010 and SRTM: courtesy of the U.S. Geological Survey.',
} as const;

/** Pixels along a side of a tile. */
export const TILE_PIXELS = 256;
/** Latitude at which Web Mercator's square ends, degrees. */
export const MERCATOR_LAT = 85.0511;

/** Column of tiles (a fraction inside the tile) a longitude falls in at a zoom. */
export function tileX(lon: number, zoom: number): number {
  return ((lon + 180) / 360) * 2 ** zoom;
}

/** Row of tiles (a fraction inside the tile, from the north) a latitude falls in at a zoom. */
export function tileY(lat: number, zoom: number): number {
  const phi = (Math.max(-MERCATOR_LAT, Math.min(MERCATOR_LAT, lat)) * Math.PI) / 180;
  return ((1 - Math.asinh(Math.tan(phi)) / Math.PI) / 2) * 2 ** zoom;
}

/**
 * Elevations of a tile, m, row by row from the north: red * 256 + green + blue / 256 - 32768.
 * @throws Error when the bytes are no PNG of 256 by 256 pixels in three or four colours of 8 bits
 */
export function decodeTerrarium(png: Uint8Array): Float32Array {
  const { width, height, channels, depth, data } = decode(png, { checkCrc: true });
  if (width !== TILE_PIXELS || height !== TILE_PIXELS || channels < 3 || depth !== 8) {
    throw new Error(`a picture of ${width} by ${height} pixels, ${channels} colours of ${depth} bits`);
  }
  return Float32Array.from(
    { length: width * height },
    (_, i) => data[i * channels] * 256 + data[i * channels + 1] + data[i * channels + 2] / 256 - 32768,
  );
}
