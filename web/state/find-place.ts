import { t } from '../../analysis/language/t.ts';
import { zipWithoutFour, type PackPlaces, type PackStation } from '../../analysis/records/pack.ts';
import type { OpenPack } from '../data/open-pack.ts';
import { plural } from '../format/numbers.ts';
import type { Place } from './chosen.ts';

/** One line of the list that opens under the search box. */
export interface PlaceHit {
  readonly place: Place;
  readonly label: string;
  /** What it is: `postcode`, `town`, `station`. */
  readonly kind: 'postcode' | 'town' | 'station';
  readonly detail: string;
}

const KINDS = ['postcode', 'town', 'station'] as const;

/** Lower case, without accents, spaces or hyphens: "SC-101", "sc 101" and "SC101" are the same. */
function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s\-'.]/g, '');
}

function candidates(pack: Pick<OpenPack, 'places' | 'stations'>): (PlaceHit & { words: string })[] {
  const { places, stations } = pack;
  return [
    ...places.postcodes.map(({ code, name }) => ({
      place: { by: 'postcode' as const, code },
      label: code,
      kind: 'postcode' as const,
      detail: name,
      words: `${code} ${name}`,
    })),
    ...places.towns.map(({ name }) => ({
      place: { by: 'postcode' as const, code: name },
      label: name,
      kind: 'town' as const,
      detail: t`town`,
      words: name,
    })),
    ...stations.map(({ id, name, winters }) => ({
      place: { by: 'station' as const, id },
      label: name,
      kind: 'station' as const,
      detail: t`station, ${plural(winters.complete, t`complete winter`, t`complete winters`)}`,
      words: `${name} ${id}`,
    })),
  ];
}

/** How well an entry fits: 0 the same, 1 begins so, 2 a word begins so, 3 somewhere inside, `null` not at all. */
function fit(words: string, label: string, query: string): number | null {
  if (plain(label) === query) return 0;
  if (plain(label).startsWith(query)) return 1;
  if (words.split(/\s+/).some((word) => plain(word).startsWith(query))) return 2;
  return plain(words).includes(query) ? 3 : null;
}

/** Postcodes, towns and stations that fit what was typed, best first, at most `most`. Nothing typed: nothing. */
export function findPlaces(
  typed: string,
  pack: Pick<OpenPack, 'places' | 'stations'>,
  most = 8,
): readonly PlaceHit[] {
  const query = plain(typed);
  if (query === '') return [];
  const hits = candidates(pack)
    .map((entry, index) => ({ entry, index, rank: fit(entry.words, entry.label, query) }))
    .filter((scored) => scored.rank !== null)
    .sort(
      (a, b) =>
        a.rank! - b.rank! || KINDS.indexOf(a.entry.kind) - KINDS.indexOf(b.entry.kind) || a.index - b.index,
    )
    .slice(0, most)
    .map(({ entry: { place, label, kind, detail } }) => ({ place, label, kind, detail }));
  const zip = zipWithoutFour(typed);
  return hits.length > 0 || zip === null ? hits : findPlaces(zip, pack, most);
}

/** Coordinates and name of a postcode or town, `null` when the pack doesn't know it. */
export function locateCode(
  code: string,
  places: PackPlaces,
): { readonly label: string; readonly lat: number; readonly lon: number } | null {
  const wanted = plain(code);
  const postcode = places.postcodes.find((entry) => plain(entry.code) === wanted);
  if (postcode)
    return { label: `${postcode.code} ${postcode.name}`.trim(), lat: postcode.lat, lon: postcode.lon };
  const town = places.towns.find((entry) => plain(entry.name) === wanted);
  return town ? { label: town.name, lat: town.lat, lon: town.lon } : null;
}

/** The station a place asks for by id, or `null`. */
export function locateStation(id: string, stations: readonly PackStation[]): PackStation | null {
  return stations.find((station) => station.id === id) ?? null;
}
