import type { OpenPack } from '../../../data/open-pack.ts';
import type { Place } from '../../../state/chosen.ts';
import { findPlaces, type PlaceHit } from '../../../state/find-place.ts';

/** A place that may be meant, with what stands on its button. */
export interface TypedHit {
  readonly place: Place;
  readonly label: string;
  readonly detail: string;
}

/** What a typed or scanned text means: places that fit, best first, or those whose codes come nearest to it. */
export interface TypedPlaces {
  readonly hits: readonly TypedHit[];
  /** True: nothing fits, and `hits` only come near. */
  readonly near: boolean;
}

const MOST_HITS = 6;
/** A longer text is no name of a place. */
const LONGEST_TYPED = 80;
const POINT = /^\s*(-?\d{1,2}(?:\.\d+)?)\s*[,;\s]\s*(-?\d{1,3}(?:\.\d+)?)\s*$/;

/** Postcodes, towns and stations as the place's own box finds them, points as `LAT, LON`; else the nearest postcodes. */
export function findTyped(typed: string, pack: Pick<OpenPack, 'places' | 'stations'>): TypedPlaces {
  const text = typed.slice(0, LONGEST_TYPED);
  const found = findPlaces(text, pack, MOST_HITS);
  if (found.length > 0) return { hits: found.map(plainHit), near: false };
  const point = pointOf(text);
  if (point) return { hits: [point], near: false };
  return { hits: text.trim() === '' ? [] : nearestCodes(text, pack), near: true };
}

function plainHit({ place, label, detail }: PlaceHit): TypedHit {
  return { place, label, detail };
}

function pointOf(text: string): TypedHit | null {
  const parts = POINT.exec(text);
  if (!parts) return null;
  const [lat, lon] = [Number(parts[1]), Number(parts[2])];
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180) return null;
  return { place: { by: 'point', lat, lon }, label: `${lat}, ${lon}`, detail: '' };
}

/** Codes that begin alike for longest, then those whose figures lie nearest. */
function nearestCodes(typed: string, { places }: Pick<OpenPack, 'places'>): readonly TypedHit[] {
  const wanted = plain(typed);
  const scored = places.postcodes.map(({ code, name }) => {
    const own = plain(code);
    let alike = 0;
    while (alike < own.length && own[alike] === wanted[alike]) alike++;
    const apart = Math.abs(figuresOf(own) - figuresOf(wanted));
    return { hit: { place: { by: 'postcode' as const, code }, label: code, detail: name }, alike, apart };
  });
  return scored
    .filter(({ alike, apart }) => alike > 0 || apart < Infinity)
    .sort((a, b) => b.alike - a.alike || a.apart - b.apart)
    .slice(0, 4)
    .map(({ hit }) => hit);
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/** Figures of a code as a number; without any it is far from every other. */
function figuresOf(code: string): number {
  const figures = code.replace(/\D/g, '').slice(0, 9);
  return figures === '' ? Infinity : Number(figures);
}
