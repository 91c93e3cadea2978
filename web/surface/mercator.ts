/** Latitude on the map's scale: degrees of longitude at the equator. */
export function mercatorY(lat: number): number {
  return (Math.asinh(Math.tan((lat * Math.PI) / 180)) * 180) / Math.PI;
}
