import { DEFAULT_ARCHIVE } from '../../analysis/archive/layout.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { DEFAULT_TILES } from './terrain-tiles.ts';

/** What to fetch, and how patiently. Only `near`, `km` and `out` are needed. */
export interface FetchOptions {
  /** Point around which stations are wanted, degrees north and east. */
  readonly near: { readonly lat: number; readonly lon: number };
  /** Greatest distance of a station, km, above 0 and at most 2,000. */
  readonly km: number;
  /** Folder to write to; made when absent, and gone on with when an earlier run was cut short. */
  readonly out: string;
  /** Base address of the archive or a mirror with the same layout. */
  readonly archive?: string;
  /** Whether elevation tiles around the stations are wanted too. */
  readonly elevation?: boolean;
  /** Base address of elevation tiles in the Terrarium encoding, `Z/X/Y.png` below it. */
  readonly tiles?: string;
  /** Most stations to take, 1 to 500. */
  readonly most?: number;
  /** Fewest years in which a station has both minima and maxima, 1 to 300. */
  readonly minYears?: number;
  /** Pause between two files, ms. */
  readonly pauseMs?: number;
  /** Tries of a file in a row that bring nothing new before giving up. */
  readonly tries?: number;
  /** Wait before the second try, ms; it doubles with each further one, up to 30 s. */
  readonly backoffMs?: number;
  /** Silence after which a connection counts as cut, ms. */
  readonly silenceMs?: number;
  /** Ends the run early; what has come so far is kept for the next run. */
  readonly signal?: AbortSignal;
}

const DEFAULTS = {
  archive: DEFAULT_ARCHIVE,
  elevation: false as boolean,
  tiles: DEFAULT_TILES,
  most: 25,
  minYears: 20,
  pauseMs: 250,
  tries: 5,
  backoffMs: 500,
  silenceMs: 30_000,
} as const;

/** Options with every gap filled, and the addresses ending in a slash. */
export type CheckedOptions = Required<Omit<FetchOptions, 'signal'>> & Pick<FetchOptions, 'signal'>;

/** Fills in what wasn't given. Throws {@link InputError} where a value is outside its limits. */
export function checkOptions(options: FetchOptions): CheckedOptions {
  const given = Object.entries(options).filter(([, value]) => value !== undefined);
  const full: CheckedOptions = { ...DEFAULTS, ...(Object.fromEntries(given) as unknown as FetchOptions) };
  within('the latitude of --near', full.near.lat, -90, 90);
  within('the longitude of --near', full.near.lon, -180, 180);
  within('--km', full.km, Number.MIN_VALUE, 2000);
  within('--most', full.most, 1, 500, true);
  within('--min-years', full.minYears, 1, 300, true);
  return {
    ...full,
    archive: checkAddress('--archive', full.archive),
    tiles: checkAddress('--tiles', full.tiles),
  };
}

function within(name: string, value: number, lowest: number, highest: number, whole = false): void {
  if (value >= lowest && value <= highest && (!whole || Number.isInteger(value))) return;
  const limits =
    lowest === Number.MIN_VALUE ? `above 0 and at most ${highest}` : `from ${lowest} to ${highest}`;
  throw new InputError(`${name} is ${value}, but must be ${whole ? 'a whole number ' : ''}${limits}`);
}

function checkAddress(name: string, address: string): string {
  const url = URL.canParse(address) ? new URL(address) : undefined;
  if (url?.protocol !== 'http:' && url?.protocol !== 'https:') {
    throw new InputError(
      `${name} is "${address}", but must be an address that begins with https:// or http://`,
    );
  }
  url.search = '';
  url.hash = '';
  if (!url.pathname.endsWith('/')) url.pathname += '/';
  return url.href;
}
