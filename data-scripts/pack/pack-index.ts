import { readdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { checkPackManifest } from '../../analysis/records/check-pack.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackIndexEntry } from '../../analysis/records/pack.ts';
import { parseJson } from './open-pack.ts';

/**
 * Writes `index.json` of a folder of packs: invented packs last, then by title; the first is the default.
 * @returns the entries
 * @throws InputError when the folder holds no pack
 */
export async function writePackIndex(folder: string): Promise<PackIndexEntry[]> {
  const entries: PackIndexEntry[] = [];
  for (const item of await readdir(folder, { withFileTypes: true })) {
    if (!item.isDirectory() || item.name.startsWith('.')) continue;
    const file = path.join(folder, item.name, 'pack.json');
    const text = await readFile(file, 'utf8').catch(() => null);
    if (text === null) continue;
    const manifest = checkPackManifest(parseJson(text, file), file);
    entries.push({
      id: manifest.id,
      title: manifest.title,
      invented: manifest.invented,
      path: item.name,
      bytes: manifest.files.reduce((sum, entry) => sum + entry.bytes, 0),
      stations: manifest.stations.count,
      winters: manifest.winters,
    });
  }
  if (entries.length === 0) throw new InputError(`${folder} holds no pack (no folder in it has a pack.json)`);
  entries.sort((a, b) => Number(a.invented) - Number(b.invented) || (a.title < b.title ? -1 : 1));
  const file = path.join(folder, 'index.json');
  await writeFile(`${file}.part`, `${JSON.stringify(entries, null, 1)}\n`);
  await rename(`${file}.part`, file);
  return entries;
}
