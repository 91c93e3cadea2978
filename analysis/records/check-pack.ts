import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from './input-error.ts';
import { checkManifest, type PackManifest, type PackPlaces, type PackStation } from './pack.ts';

/** Most stations and postcodes or towns of a pack, and most files. */
export const PACK_LIMITS = { stations: 20_000, places: 200_000, files: 20_000 } as const;

/** Longest name, id or path. */
const LONGEST_NAME = 300;
/** Names of tiles are parts of paths. */
const TILE = /^[a-z0-9-]{1,40}$/;
const SHA256 = /^[0-9a-f]{64}$/;
/** Winters that can be on record. */
const WINTERS = { first: 1600, last: 2500 } as const;
const ELEVATION_M = { from: -500, to: 9000 } as const;
const COAST_KM_MAX = 10_000;
const HEMISPHERES: readonly unknown[] = ['north', 'south', 'both', undefined];
const BASES: readonly unknown[] = ['daily', 'hourly', 'both', undefined];

/**
 * Checks a parsed `pack.json` in all that readers of packs rely on: what {@link checkManifest} does, and the shape of each
 * field. For packs that people bring.
 * @throws InputError naming the file and the field
 */
export function checkPackManifest(value: unknown, file: string): PackManifest {
  const manifest = checkManifest(value, file);
  const need = (holds: boolean, field: string): void => {
    if (!holds) throw new InputError(t`${file}: field "${field}" is not as it should be.`);
  };
  const { id, title, hemisphere, bbox, winters, sources, files, notes, dropped, doubtful, stations, place } =
    manifest;
  need(isName(id), 'id');
  need(isName(title), 'title');
  need(HEMISPHERES.includes(hemisphere), 'hemisphere');
  need(Array.isArray(bbox) && bbox.length === 4 && bbox.every((side) => isWithin(side, -180, 360)), 'bbox');
  need(isObject(winters) && isWinter(winters.first) && isWinter(winters.last), 'winters');
  need(
    Array.isArray(sources) &&
      sources.every(
        (one) => isObject(one) && isText(one.name) && isText(one.licence) && isText(one.attribution),
      ),
    'sources',
  );
  need(Array.isArray(files) && files.length <= PACK_LIMITS.files && files.every(isFile), 'files');
  need(new Set(files.map(({ path }) => path)).size === files.length, 'files');
  need(notes === undefined || (Array.isArray(notes) && notes.every(isText)), 'notes');
  for (const [counts, field] of [
    [dropped, 'dropped'],
    [doubtful, 'doubtful'],
  ] as const)
    // prettier-ignore
    need(counts === undefined || (isObject(counts) && Object.values(counts).every(Number.isInteger)), field);
  need(stations === undefined || (isObject(stations) && Number.isInteger(stations.count)), 'stations');
  need(place === undefined || isPlaceModel(place), 'place');
  return manifest;
}

/**
 * Checks a parsed `stations.json`.
 * @throws InputError naming the file, the station and the field
 */
export function checkPackStations(value: unknown, file: string): readonly PackStation[] {
  if (!Array.isArray(value) || value.length === 0) throw new InputError(t`${file} lists no station.`);
  if (value.length > PACK_LIMITS.stations)
    throw new InputError(
      t`${file} lists ${sayCount(value.length)} stations; at most ${sayCount(PACK_LIMITS.stations)} are taken.`,
    );
  const seen = new Set<string>();
  for (const [at, one] of (value as readonly unknown[]).entries()) {
    const need = (holds: boolean, field: string): void => {
      if (!holds)
        throw new InputError(t`${file}: field "${field}" of station ${at + 1} is not as it should be.`);
    };
    need(isObject(one) && isName(one.id) && !seen.has(one.id), 'id');
    const { id, name, lat, lon, elevation_m, coast_km, winters, basis, tile } = one as Readonly<
      Record<string, unknown>
    >;
    seen.add(id as string);
    need(isText(name), 'name');
    need(isWithin(lat, -90, 90), 'lat');
    need(isWithin(lon, -180, 180), 'lon');
    need(elevation_m === null || isWithin(elevation_m, ELEVATION_M.from, ELEVATION_M.to), 'elevation_m');
    need(coast_km === null || coast_km === undefined || isWithin(coast_km, 0, COAST_KM_MAX), 'coast_km');
    need(isObject(winters) && Number.isInteger(winters.complete), 'winters');
    need(BASES.includes(basis), 'basis');
    need(typeof tile === 'string' && TILE.test(tile), 'tile');
  }
  return value as readonly PackStation[];
}

/**
 * Checks a parsed `places.json`; lists that are left out are empty.
 * @throws InputError naming the file and the entry
 */
export function checkPlaces(value: unknown, file: string): PackPlaces {
  if (!isObject(value)) throw new InputError(t`${file} is no list of places.`);
  const listOf = (
    field: 'postcodes' | 'towns',
    holds: (one: Record<string, unknown>) => boolean,
  ): unknown => {
    const list = value[field] ?? [];
    if (!Array.isArray(list)) throw new InputError(t`${file}: field "${field}" is not a list.`);
    if (list.length > PACK_LIMITS.places)
      throw new InputError(
        t`${file}: field "${field}" lists ${sayCount(list.length)}; at most ${sayCount(PACK_LIMITS.places)} are taken.`,
      );
    const wrong = list.findIndex(
      (one) =>
        !isObject(one) ||
        !isText(one.name) ||
        !isWithin(one.lat, -90, 90) ||
        !isWithin(one.lon, -180, 180) ||
        !holds(one),
    );
    if (wrong >= 0)
      throw new InputError(t`${file}: entry ${wrong + 1} of "${field}" is not as it should be.`);
    return list;
  };
  return {
    postcodes: listOf('postcodes', ({ code }) => isName(code)) as PackPlaces['postcodes'],
    towns: listOf('towns', ({ rank }) => Number.isFinite(rank)) as PackPlaces['towns'],
  };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function isName(value: unknown): value is string {
  return isText(value) && value.trim() !== '' && value.length <= LONGEST_NAME;
}

function isWithin(value: unknown, from: number, to: number): boolean {
  return typeof value === 'number' && value >= from && value <= to;
}

function isWinter(value: unknown): boolean {
  return Number.isInteger(value) && isWithin(value, WINTERS.first, WINTERS.last);
}

/** A file of the pack lies in it: no part of its path is empty or leads out. */
function isFile(value: unknown): boolean {
  if (!isObject(value)) return false;
  const { path, bytes, sha256 } = value;
  return (
    isName(path) &&
    path.split('/').every((part) => part !== '' && part !== '.' && part !== '..' && !part.includes('\\')) &&
    Number.isInteger(bytes) &&
    (bytes as number) >= 0 &&
    isText(sha256) &&
    SHA256.test(sha256)
  );
}

function isPlaceModel(value: unknown): boolean {
  if (!isObject(value)) return false;
  const { mean, logScale, anomaly, errors } = value;
  return (
    [mean, logScale].every(
      (one) =>
        isObject(one) &&
        (one.kind === 'exponential' || one.kind === 'spherical') &&
        [one.sill, one.rangeKm, one.nugget].every(isMeasure),
    ) &&
    isObject(anomaly) &&
    isWithin(anomaly.share, 0, 1) &&
    isMeasure(anomaly.rangeKm) &&
    (errors === undefined ||
      (Array.isArray(errors) &&
        errors.every(
          (one) =>
            isObject(one) &&
            isMeasure(one.mean) &&
            isMeasure(one.logScale) &&
            isWithin(one.correlation, -1, 1),
        )))
  );
}

function isMeasure(value: unknown): boolean {
  return isWithin(value, 0, Number.MAX_VALUE);
}
