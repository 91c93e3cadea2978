import { formatPlain } from '../format/numbers.ts';
import type { TemperatureUnit } from '../format/unit.ts';

const M_PER_MILE = 1609.344;
const EARTH_RADIUS_M = 6_371_008.8;
const TILE_PX = 512;

/** Ground distance of one px at a latitude and zoom of the Mercator map, m. */
export function metresPerPixel(lat: number, zoom: number): number {
  return (Math.cos((lat * Math.PI) / 180) * 2 * Math.PI * EARTH_RADIUS_M) / (TILE_PX * 2 ** zoom);
}

/** A round length that fits in `maxPx`: miles beside °F, kilometres beside °C. */
export function scaleBar(mPerPx: number, unit: TemperatureUnit, maxPx = 110): { px: number; label: string } {
  const unitM = unit === 'F' ? M_PER_MILE : 1000;
  const most = (mPerPx * maxPx) / unitM;
  const power = 10 ** Math.floor(Math.log10(most));
  const factor = [5, 2, 1].find((candidate) => candidate * power <= most) ?? 1;
  const length = Number((factor * power).toPrecision(3));
  return {
    px: (length * unitM) / mPerPx,
    label: `${formatPlain(length, 6)}\u00a0${unit === 'F' ? 'mi' : 'km'}`,
  };
}
