import { t } from '../../analysis/language/t.ts';
import { LEVELS } from '../../analysis/tree/levels.ts';
import { CONDITIONS, ROOTSTOCKS } from '../../analysis/tree/penalties.ts';
import { LANGUAGE_PARAMETER, LANGUAGES } from '../language/languages.ts';
import {
  AGE_YEARS_MAX,
  AT_LEAST_MAX,
  HORIZON_YEARS_MAX,
  MAP_SHOWS,
  PINS_MAX,
  type Chosen,
} from './chosen.ts';
import { PLACE_KEYS, readArea, readPin, readPlace, writeArea, writePin, writePlace } from './place-text.ts';

/** What an address said: the choices that make sense, and a plain sentence for each that doesn't. */
export interface AddressReading {
  readonly chosen: Chosen;
  readonly ignored: readonly string[];
}

/** Texts that later parts read; here they only must be of an address. */
const LATER = /^[\w.~!*':;,-]{1,4000}$/;

/** Ids in addresses: letters, figures, dots, hyphens, underscores. Anything else can't be one of ours. */
const ID = /^[\w.-]{1,64}$/;

function oneOf<T extends string>(allowed: readonly T[]): (text: string) => T | null {
  return (text) => allowed.find((entry) => entry === text) ?? null;
}

function whole(from: number, to: number): (text: string) => number | null {
  return (text) => {
    const value = Number(text);
    return /^\d{1,4}$/.test(text) && value >= from && value <= to ? value : null;
  };
}

const later = (text: string): string | null => (LATER.test(text) ? text : null);
const id = (text: string): string | null => (ID.test(text) ? text : null);
const yes = (text: string): boolean | null => (text === 'yes' ? true : text === 'no' ? false : null);

/** How each key of the query is read; `null` means "not a value of ours". */
const READERS: {
  [K in Exclude<keyof Chosen, 'place' | 'pins' | 'area'>]-?: {
    key: string;
    read: (text: string) => Chosen[K] | null;
  };
} = {
  pack: { key: 'pack', read: id },
  ageYears: { key: 'age', read: whole(1, AGE_YEARS_MAX) },
  condition: { key: 'condition', read: oneOf(CONDITIONS) },
  fruitLoad: { key: 'fruit-load', read: yes },
  container: { key: 'container', read: yes },
  notHardened: { key: 'not-hardened', read: yes },
  rootstock: { key: 'rootstock', read: oneOf(ROOTSTOCKS) },
  level: { key: 'level', read: oneOf(LEVELS) },
  years: { key: 'years', read: whole(1, HORIZON_YEARS_MAX) },
  type: { key: 'type', read: id },
  showRootstocks: { key: 'rootstocks', read: yes },
  unit: { key: 'unit', read: oneOf(['F', 'C'] as const) },
  language: { key: LANGUAGE_PARAMETER, read: oneOf(LANGUAGES) },
  mapShows: { key: 'map', read: oneOf(MAP_SHOWS) },
  against: { key: 'against', read: id },
  atLeast: { key: 'at-least', read: whole(2, AT_LEAST_MAX) },
  spot: { key: 'spot', read: later },
  yard: { key: 'yard', read: later },
  measured: { key: 'measured', read: later },
  cover: { key: 'cover', read: later },
  life: { key: 'life', read: later },
  wishes: { key: 'wishes', read: later },
  sheet: { key: 'sheet', read: later },
  counter: { key: 'counter', read: later },
  mapWinters: { key: 'map-winters', read: oneOf(['all', 'last30'] as const) },
};

function ignoring(key: string, value: string): string {
  const shown = value.length > 40 ? `${value.slice(0, 40)}…` : value;
  return t`The link asked for ${key} “${shown}”, which means nothing here, so it was left out.`;
}

/** Read the query of an address. Keys that aren't ours are passed over in silence: others may have added them. */
export function readAddress(search: string): AddressReading {
  const query = new URLSearchParams(search);
  const chosen: Record<string, unknown> = {};
  const ignored: string[] = [];
  for (const [name, { key, read }] of Object.entries(READERS)) {
    const text = query.get(key);
    if (text === null) continue;
    const value = read(text);
    if (value === null) ignored.push(ignoring(key, text));
    else chosen[name] = value;
  }
  for (const key of PLACE_KEYS) {
    const text = query.get(key);
    if (text === null) continue;
    const place = readPlace(key, text);
    if (place === null) ignored.push(ignoring(key, text));
    else if (chosen.place === undefined) chosen.place = place;
    else ignored.push(t`The link named more than one place; ${key} “${text}” was left out.`);
  }
  // A folded query is unfolded before it comes here; one that is left made no sense.
  const folded = query.get('s');
  if (folded !== null) ignored.push(ignoring('s', folded));
  const area = query.get('area');
  if (area !== null) {
    const corners = readArea(area);
    if (corners) chosen.area = corners;
    else ignored.push(ignoring('area', area));
  }
  const pins = query.getAll('pin').flatMap((text) => {
    const pin = readPin(text);
    if (!pin) ignored.push(ignoring('pin', text));
    return pin ? [pin] : [];
  });
  if (pins.length > PINS_MAX)
    ignored.push(t`The link pinned ${pins.length} places; the first ${PINS_MAX} were taken.`);
  if (pins.length > 0) chosen.pins = pins.slice(0, PINS_MAX);
  return { chosen: chosen as Chosen, ignored };
}

/** The query for a set of choices, `''` or `?key=value...`, in a fixed order. */
export function writeAddress(chosen: Chosen): string {
  const query = new URLSearchParams();
  if (chosen.pack !== undefined) query.set('pack', chosen.pack);
  if (chosen.place) query.set(...writePlace(chosen.place));
  for (const [name, { key }] of Object.entries(READERS)) {
    const value = chosen[name as keyof typeof READERS];
    if (value === undefined || name === 'pack') continue;
    query.set(key, typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value));
  }
  for (const pin of chosen.pins ?? []) query.append('pin', writePin(pin));
  if (chosen.area) query.set('area', writeArea(chosen.area));
  const text = query.toString().replaceAll('%2C', ',').replaceAll('%3A', ':');
  return text === '' ? '' : `?${text}`;
}
