import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackPlaces } from '../../analysis/records/pack.ts';
import { formatPoint } from '../format/numbers.ts';
import { ELEVATION_MAX_M, ELEVATION_MIN_M } from '../state/chosen.ts';

/** The place around which stations are wanted. */
export interface ArchivePlace {
  readonly lat: number;
  readonly lon: number;
  /** How it is called in the title of a pack. */
  readonly label: string;
  /** Height of its ground, m; null where the reader didn't tell. */
  readonly elevationM: number | null;
}

const NUMBER = '(-?\\d{1,3}(?:[.,]\\d+)?)\\s*°?\\s*';
const POINT = new RegExp(`^\\s*${NUMBER}([NS])?[\\s,;]+${NUMBER}([EWO])?\\s*$`, 'i');

/** A point by its degrees, to about a metre. */
export function pointPlace(lat: number, lon: number, elevationM: number | null = null): ArchivePlace {
  const [north, east] = [lat, lon].map((value) => Number(value.toFixed(4)));
  return { lat: north!, lon: east!, label: formatPoint(lat, lon), elevationM };
}

/**
 * A point as people type it: `29.95, -90.07`, `29.95 N 90.07 W`, with points or commas as decimal signs.
 * @throws InputError when it is none, or not on the globe
 */
export function readPoint(typed: string): { readonly lat: number; readonly lon: number } {
  const [, north, ns, east, ew] = POINT.exec(typed) ?? [];
  if (north === undefined || east === undefined) {
    throw new InputError(
      t`“${typed.slice(0, 40)}” is no point: type degrees north and degrees east, such as 29.95, -90.07.`,
    );
  }
  const degrees = (text: string, negative: boolean): number =>
    Number(text.replace(',', '.')) * (negative ? -1 : 1);
  const lat = degrees(north, /s/i.test(ns ?? ''));
  const lon = degrees(east, /[wo]/i.test(ew ?? ''));
  if (Math.abs(lat) > 90) throw new InputError(t`The latitude is ${lat}, but must be from -90 to 90.`);
  if (Math.abs(lon) > 180) throw new InputError(t`The longitude is ${lon}, but must be from -180 to 180.`);
  return { lat, lon };
}

/** A ZIP code's place. @throws InputError when the list doesn't have it */
export function zipPlace(typed: string, codes: PackPlaces['postcodes']): ArchivePlace {
  const wanted = typed.trim().replace(/-\d{4}$/, '');
  const found = codes.find(({ code }) => code === wanted);
  if (!found) throw new InputError(t`The list of ZIP codes has no “${wanted.slice(0, 20)}”.`);
  return { lat: found.lat, lon: found.lon, label: `${found.code} ${found.name}`, elevationM: null };
}

/** @throws InputError when no land lies so high or low */
export function checkElevation(elevationM: number): number {
  if (elevationM >= ELEVATION_MIN_M && elevationM <= ELEVATION_MAX_M) return Math.round(elevationM);
  throw new InputError(
    t`No land lies at ${Math.round(elevationM)} m: heights go from ${ELEVATION_MIN_M} to ${ELEVATION_MAX_M} m.`,
  );
}
