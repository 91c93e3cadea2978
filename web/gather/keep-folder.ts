import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { checkLand } from '../../analysis/records/check-land.ts';
import { checkPackManifest, checkPackStations, checkPlaces } from '../../analysis/records/check-pack.ts';
import { decodeGrid } from '../../analysis/records/grid.ts';
import type { PackIndexEntry, PackManifest, PackStation } from '../../analysis/records/pack.ts';
import { decodeWinterTile } from '../../analysis/records/winter-tile.ts';
import { formatBytes } from '../format/numbers.ts';
import { keepWhole } from '../kept/kept-packs.ts';
import type { FolderFile } from './brought-folder.ts';
import type { Waiting } from './keep-made.ts';
import { PACK_BYTES_MAX, PART_BYTES_MAX } from './limits.ts';
import { ownPackId } from './own-pack-id.ts';
import { sha256Of } from '../kept/sha256.ts';

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
  const manifest = checkPackManifest(await jsonIn(inside.get('pack.json')!, 'pack.json'), 'pack.json');
  const total = manifest.files.reduce((sum, { bytes }) => sum + bytes, 0);
  checkParts(manifest, total);
  let bytes = 0;
  for (const entry of manifest.files) {
    signal?.throwIfAborted();
    await checkFile(inside.get(entry.path), entry);
    bytes += entry.bytes;
    onProgress({ doing: 'reading', bytes, total });
  }
  const stations = await checkContent(inside);
  const id = ownPackId();
  const { title, invented, winters } = manifest;
  onProgress({ doing: 'keeping' });
  const kept = await keepWhole(
    {
      id,
      title,
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

/** @throws InputError for more than is taken, or a part that no reader can do without */
function checkParts({ files }: PackManifest, total: number): void {
  if (total > PACK_BYTES_MAX)
    throw new InputError(
      t`The pack has ${formatBytes(total)} by its pack.json; at most ${formatBytes(PACK_BYTES_MAX)} are taken.`,
    );
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

/** @throws InputError where stations, their winters, places, outlines or cells can't be read */
async function checkContent(inside: ReadonlyMap<string, File>): Promise<readonly PackStation[]> {
  const stations = checkPackStations(
    await jsonIn(inside.get('stations.json')!, 'stations.json'),
    'stations.json',
  );
  const tiles = new Map<string, ReturnType<typeof decodeWinterTile>>();
  for (const { id, tile } of stations) {
    const name = `winters/${tile}.arrow`;
    if (!tiles.has(tile)) {
      const file = inside.get(name);
      if (!file) throw new InputError(t`${name} is missing; build or download the pack again.`);
      tiles.set(tile, decodeWinterTile(await bytesIn(file, name), name));
    }
    if (!tiles.get(tile)!.has(id)) throw new InputError(t`${name}: station ${id} is missing.`);
  }
  const [places, land, grid] = ['places.json', 'land.json', 'grid.bin'].map((name) => inside.get(name));
  if (places) checkPlaces(await jsonIn(places, 'places.json'), 'places.json');
  if (land) checkLand(await jsonIn(land, 'land.json'), 'land.json');
  if (grid) decodeGrid(await bytesIn(grid, 'grid.bin'), 'grid.bin');
  return stations;
}

/** @throws InputError for a part that is larger than any a pack has */
async function bytesIn(file: File, name: string): Promise<Uint8Array> {
  if (file.size > PART_BYTES_MAX)
    throw new InputError(
      t`${name} has ${formatBytes(file.size)}; at most ${formatBytes(PART_BYTES_MAX)} are taken.`,
    );
  return new Uint8Array(await file.arrayBuffer());
}

async function jsonIn(file: File, name: string): Promise<unknown> {
  const text = new TextDecoder().decode(await bytesIn(file, name));
  try {
    return JSON.parse(text);
  } catch {
    throw new InputError(t`${name} is not valid JSON.`);
  }
}
