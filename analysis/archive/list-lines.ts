import type { LocatedStation } from '../records/station.ts';

/** Years of one element of a station, as the archive's inventory has them. */
export interface InventoryEntry {
  readonly id: string;
  readonly element: string;
  readonly first: number;
  readonly last: number;
}

/** A line of the station list, or undefined where it is none (columns: section IV of the archive's readme). */
export function parseStationLine(line: string): LocatedStation | undefined {
  const id = line.slice(0, 11).trim();
  const lat = Number(line.slice(12, 20).trim() || NaN);
  const lon = Number(line.slice(21, 30).trim() || NaN);
  if (!/^\w{11}$/.test(id) || !(Math.abs(lat) <= 90) || !(Math.abs(lon) <= 180)) return undefined;
  const elevation = line.slice(31, 37).trim();
  const known = elevation !== '' && Number.isFinite(Number(elevation)) && Number(elevation) > -999;
  return { id, name: line.slice(41, 71).trim(), lat, lon, elevationM: known ? Number(elevation) : null };
}

/** Years of one element of a station, from a line of the inventory (section VII of the readme). */
export function parseInventoryLine(line: string): InventoryEntry | undefined {
  const [id, element] = [line.slice(0, 11).trim(), line.slice(31, 35).trim()];
  const years = [line.slice(36, 40), line.slice(41, 45)].map((text) => text.trim());
  if (!id || !element || !years.every((text) => /^\d{1,4}$/.test(text))) return undefined;
  const [first, last] = years.map(Number);
  return first > 0 && last >= first ? { id, element, first, last } : undefined;
}
