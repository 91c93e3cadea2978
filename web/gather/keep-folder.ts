import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import {
  checkManifest,
  type PackIndexEntry,
  type PackManifest,
  type PackStation,
} from '../../analysis/records/pack.ts';
import { decodeWinterTile } from '../../analysis/records/winter-tile.ts';
import { keepWhole } from '../kept/kept-packs.ts';
import type { FolderFile } from './brought-folder.ts';
import type { Waiting } from './keep-made.ts';
import { ownPackId } from './own-pack-id.ts';
import { sha256Of } from './sha256.ts';

/**
 * Keeps a pack folder as it is, after the checks of `records check`: version, sizes and checksums of all files, stations and
 * their winters.
 * @param folder path of the folder, '' or ending in `/`
 * @throws InputError naming the file and what is wrong
 */
export async function keepFolder(
  files: readonly FolderFile[],
  folder: string,
  { onProgress = () => {}, signal }: Waiting = {},
): Promise<PackIndexEntry> {
  const inside = new Map(
    files
      .filter(({ path }) => path.startsWith(folder))
      .map(({ path, file }) => [path.slice(folder.length), file]),
  );
  const manifest = checkManifest(await jsonIn(inside.get('pack.json')!, 'pack.json'), 'pack.json');
  checkShape(manifest);
  const total = manifest.files.reduce((sum, { bytes }) => sum + bytes, 0);
  let bytes = 0;
  for (const entry of manifest.files) {
    signal?.throwIfAborted();
    await checkFile(inside.get(entry.path), entry);
    bytes += entry.bytes;
    onProgress({ doing: 'reading', bytes, total });
  }
  const stations = await checkStations(inside);
  const id = ownPackId();
  const { title, invented, winters } = manifest;
  onProgress({ doing: 'keeping' });
  const kept = await keepWhole(
    {
      id,
      title: String(title),
      invented: invented === true,
      path: id,
      bytes: total,
      stations: stations.length,
      winters,
    },
    true,
    async (put) => {
      for (const { path } of manifest.files) await put(path, inside.get(path)!);
      await put('pack.json', `${JSON.stringify({ ...manifest, id })}\n`);
    },
    signal,
  );
  return kept.entry;
}

/** @throws InputError where a field is not what readers of packs rely on */
function checkShape({ files, winters, bbox, sources }: PackManifest): void {
  const wrong = (field: string): never => {
    throw new InputError(t`pack.json: field "${field}" is not as it should be.`);
  };
  if (
    !Array.isArray(files) ||
    files.some(
      ({ path, bytes, sha256 }) =>
        typeof path !== 'string' || !Number.isInteger(bytes) || typeof sha256 !== 'string',
    )
  )
    wrong('files');
  if (!Number.isInteger(winters?.first) || !Number.isInteger(winters?.last)) wrong('winters');
  if (!Array.isArray(bbox) || bbox.length !== 4 || bbox.some((side) => !Number.isFinite(side))) wrong('bbox');
  if (!Array.isArray(sources)) wrong('sources');
  for (const needed of ['stations.json', 'records.duckdb'])
    if (!files.some(({ path }) => path === needed))
      throw new InputError(t`pack.json does not list ${needed}.`);
}

async function checkFile(
  file: File | undefined,
  { path, bytes, sha256 }: PackManifest['files'][number],
): Promise<void> {
  if (!file)
    throw new InputError(t`${path} is listed in pack.json but missing; build or download the pack again.`);
  if (file.size !== bytes)
    throw new InputError(
      t`${path} has ${file.size} bytes, pack.json says ${bytes}; build or download the pack again.`,
    );
  if ((await sha256Of(file)) !== sha256)
    throw new InputError(
      t`${path} is damaged (its checksum is not the one in pack.json); build or download the pack again.`,
    );
}

/** @throws InputError where stations or their winters can't be read */
async function checkStations(inside: ReadonlyMap<string, File>): Promise<readonly PackStation[]> {
  const stations = await jsonIn(inside.get('stations.json')!, 'stations.json');
  if (!Array.isArray(stations) || stations.length === 0)
    throw new InputError(t`stations.json lists no station.`);
  const tiles = new Map<string, ReturnType<typeof decodeWinterTile>>();
  for (const { id, lat, lon, tile } of stations as readonly PackStation[]) {
    if (typeof id !== 'string' || !(Math.abs(lat) <= 90) || !(Math.abs(lon) <= 180))
      throw new InputError(t`stations.json: a station has no id or no place.`);
    const name = `winters/${tile}.arrow`;
    if (!tiles.has(tile)) {
      const file = inside.get(name);
      if (!file) throw new InputError(t`${name} is missing; build or download the pack again.`);
      tiles.set(tile, decodeWinterTile(new Uint8Array(await file.arrayBuffer()), name));
    }
    if (!tiles.get(tile)!.has(id)) throw new InputError(t`${name}: station ${id} is missing.`);
  }
  return stations as readonly PackStation[];
}

async function jsonIn(file: File, name: string): Promise<unknown> {
  try {
    return JSON.parse(await file.text());
  } catch {
    throw new InputError(t`${name} is not valid JSON.`);
  }
}
