import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { WinterSource } from '../../analysis/answer/place-histories.ts';
import type { PlaceParameters } from '../../analysis/place/place-parameters.ts';
import { checkPackManifest, checkPackStations, checkPlaces } from '../../analysis/records/check-pack.ts';
import { decodeGrid, type PlaceGrid } from '../../analysis/records/grid.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import {
  postcodeKey,
  zipWithoutFour,
  type PackManifest,
  type PackPlaces,
  type PackStation,
} from '../../analysis/records/pack.ts';
import { decodeWinterTile } from '../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { sha256Of } from '../build/staging.ts';

/** A record pack on disk. Every file is checked against the manifest's size and checksum before it is used. */
export class Pack implements WinterSource {
  #grid: Promise<PlaceGrid | null> | null = null;
  readonly #tiles = new Map<string, Promise<Map<string, WinterTable>>>();

  private constructor(
    readonly folder: string,
    readonly manifest: PackManifest,
    readonly stations: readonly PackStation[],
    readonly places: PackPlaces,
  ) {}

  /** @throws InputError when the folder is no pack, of another schema version, or damaged */
  static async open(folder: string): Promise<Pack> {
    const file = path.join(folder, 'pack.json');
    const manifest = checkPackManifest(
      parseJson(await readFile(file, 'utf8').catch(refuseMissing(folder)), file),
      file,
    );
    const stations = checkPackStations(
      parseJson(await readWhole(folder, manifest, 'stations.json'), 'stations.json'),
      'stations.json',
    );
    const hasPlaces = manifest.files.some((entry) => entry.path === 'places.json');
    const places = hasPlaces
      ? checkPlaces(parseJson(await readWhole(folder, manifest, 'places.json'), 'places.json'), 'places.json')
      : { postcodes: [], towns: [] };
    return new Pack(folder, manifest, stations, places);
  }

  /** @throws InputError when the pack has no such station */
  station(id: string): PackStation {
    const station = this.stations.find((entry) => entry.id === id);
    if (station) return station;
    throw new InputError(
      `station "${id}" is not in the pack ${this.folder}, which has ${this.stations.length} stations`,
    );
  }

  /** @throws InputError when the pack has no such postcode */
  postcode(code: string): PackPlaces['postcodes'][number] {
    const find = (wanted: string) =>
      this.places.postcodes.find((entry) => postcodeKey(entry.code) === postcodeKey(wanted));
    const found = find(code) ?? find(zipWithoutFour(code) ?? code);
    if (found) return found;
    throw new InputError(
      this.places.postcodes.length === 0
        ? `the pack ${this.folder} has no postcodes; build it with --places`
        : `postcode "${code}" is not among the ${this.places.postcodes.length} of the pack ${this.folder}`,
    );
  }

  async winters(station: PackStation): Promise<WinterTable> {
    const name = `winters/${station.tile}.arrow`;
    let tile = this.#tiles.get(name);
    if (!tile) {
      tile = readChecked(this.folder, this.manifest, name).then((bytes) => decodeWinterTile(bytes, name));
      this.#tiles.set(name, tile);
    }
    const winters = (await tile).get(station.id);
    if (!winters) throw new InputError(`${name}: station ${station.id} is missing`);
    return winters;
  }

  get place(): PlaceParameters | null {
    return this.manifest.place ?? null;
  }

  /** Cells with elevation and distance to the coast; `null` when the pack has none. */
  grid(): Promise<PlaceGrid | null> {
    const name = 'grid.bin';
    this.#grid ??= this.manifest.files.some((entry) => entry.path === name)
      ? readChecked(this.folder, this.manifest, name).then((bytes) => decodeGrid(bytes, name))
      : Promise.resolve(null);
    return this.#grid;
  }

  /** Path of the pack's database, checked. */
  async databaseFile(): Promise<string> {
    return checkedPath(this.folder, this.manifest, 'records.duckdb');
  }
}

async function readWhole(folder: string, manifest: PackManifest, name: string): Promise<string> {
  return new TextDecoder().decode(await readChecked(folder, manifest, name));
}

async function readChecked(folder: string, manifest: PackManifest, name: string): Promise<Uint8Array> {
  return new Uint8Array(await readFile(await checkedPath(folder, manifest, name)));
}

/**
 * Path of a pack's file once size and checksum are as the manifest says.
 * @throws InputError naming the file and what differs
 */
export async function checkedPath(folder: string, manifest: PackManifest, name: string): Promise<string> {
  const file = path.join(folder, name);
  const entry = manifest.files.find((candidate) => candidate.path === name);
  if (!entry) throw new InputError(`${file} is not listed in pack.json`);
  const { size } = await stat(file).catch(() => {
    throw new InputError(`${file} is listed in pack.json but missing; build or download the pack again`);
  });
  if (size !== entry.bytes) {
    throw new InputError(
      `${file} has ${size} bytes, pack.json says ${entry.bytes}; build or download the pack again`,
    );
  }
  if ((await sha256Of(file)) !== entry.sha256) {
    throw new InputError(
      `${file} is damaged (its checksum is not the one in pack.json); build or download the pack again`,
    );
  }
  return file;
}

/** @throws InputError for what is no JSON */
export function parseJson(text: string, file: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new InputError(`${file} is not valid JSON`);
  }
}

function refuseMissing(folder: string): (error: NodeJS.ErrnoException) => never {
  return (error) => {
    throw new InputError(
      error.code === 'ENOENT'
        ? `${folder} is not a pack: it has no pack.json`
        : `${folder}/pack.json can't be read (${error.code})`,
    );
  };
}
