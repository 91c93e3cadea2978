/** What a hand-made GeoTIFF holds; geo keys as [id, value] of the kind SHORT. */
export interface HandMadeTiff {
  readonly columns: number;
  readonly rows: number;
  /** Elevations row by row from the north, stored as int16. */
  readonly values: readonly number[];
  readonly stepDeg: number;
  /** What pixel 0, 0 is tied to. */
  readonly lon: number;
  readonly lat: number;
  readonly geoKeys: readonly (readonly [id: number, value: number])[];
  readonly nodata?: number;
}

/** Geo keys of WGS 84 in degrees, pixels by their areas (TIFF 6.0 and the OGC GeoTIFF standard 1.1). */
export const DEGREES = [
  [1024, 2],
  [1025, 1],
  [2048, 4326],
] as const;

/** Bytes of a TIFF of one uncompressed strip, little-endian, written by the standard and by no library. */
export function handMadeTiff(tiff: HandMadeTiff): Uint8Array {
  const { columns, rows, values, stepDeg, lon, lat, geoKeys, nodata } = tiff;
  const keys = [1, 1, 0, geoKeys.length, ...geoKeys.flatMap(([id, value]) => [id, 0, 1, value])];
  const [SHORT, LONG, DOUBLE, ASCII] = [3, 4, 12, 2];
  const size = { [SHORT]: 2, [LONG]: 4, [DOUBLE]: 8, [ASCII]: 1 };
  const entries: [tag: number, type: number, values: number[]][] = [
    [256, SHORT, [columns]],
    [257, SHORT, [rows]],
    [258, SHORT, [16]],
    [259, SHORT, [1]],
    [262, SHORT, [1]],
    [273, LONG, [0]],
    [277, SHORT, [1]],
    [278, SHORT, [rows]],
    [279, LONG, [2 * values.length]],
    [339, SHORT, [2]],
    [33550, DOUBLE, [stepDeg, stepDeg, 0]],
    [33922, DOUBLE, [0, 0, 0, lon, lat, 0]],
    [34735, SHORT, keys],
    ...(nodata === undefined
      ? []
      : [[42113, ASCII, [...`${nodata}\0`].map((c) => c.charCodeAt(0))] as [number, number, number[]]]),
  ];
  const directoryEnd = 8 + 2 + 12 * entries.length + 4;
  const outside = entries.map(([, type, list]) => {
    const bytes = size[type] * list.length;
    return bytes > 4 ? bytes + (bytes % 2) : 0;
  });
  const dataAt = directoryEnd + outside.reduce((a, b) => a + b, 0);
  entries.find(([tag]) => tag === 273)![2][0] = dataAt;
  const bytes = new Uint8Array(dataAt + 2 * values.length);
  const view = new DataView(bytes.buffer);
  bytes.set([0x49, 0x49, 42, 0, 8, 0, 0, 0]);
  view.setUint16(8, entries.length, true);
  let free = directoryEnd;
  entries.forEach(([tag, type, list], i) => {
    const at = 10 + 12 * i;
    view.setUint16(at, tag, true);
    view.setUint16(at + 2, type, true);
    view.setUint32(at + 4, list.length, true);
    let to = at + 8;
    if (outside[i] > 0) {
      view.setUint32(to, free, true);
      to = free;
      free += outside[i];
    }
    list.forEach((value, k) => {
      if (type === SHORT) view.setUint16(to + 2 * k, value, true);
      else if (type === LONG) view.setUint32(to + 4 * k, value, true);
      else if (type === DOUBLE) view.setFloat64(to + 8 * k, value, true);
      else view.setUint8(to + k, value);
    });
  });
  values.forEach((value, k) => view.setInt16(dataAt + 2 * k, value, true));
  return bytes;
}
