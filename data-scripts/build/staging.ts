import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { chmod, mkdir, mkdtemp, readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { InputError } from '../../analysis/records/input-error.ts';

/**
 * Writes a folder whole or not at all: `write` fills a folder of a temporary name beside the target, which takes the
 * target's place only when `write` came through. Until then the old folder stays as it was.
 */
export async function writeWhole(target: string, write: (folder: string) => Promise<void>): Promise<void> {
  const parent = path.dirname(path.resolve(target));
  await mkdir(parent, { recursive: true });
  await refuseForeignFolder(target);
  const staged = await mkdtemp(path.join(parent, `.${path.basename(target)}-`));
  const retired = `${staged}-old`;
  try {
    await chmod(staged, 0o755);
    await write(staged);
    const hadOld = await rename(target, retired).then(
      () => true,
      () => false,
    );
    try {
      await rename(staged, target);
    } catch (error) {
      if (hadOld) await rename(retired, target);
      throw error;
    }
    await rm(retired, { recursive: true, force: true });
  } finally {
    await rm(staged, { recursive: true, force: true });
  }
}

/** A folder that holds something else than a pack is not replaced. */
async function refuseForeignFolder(target: string): Promise<void> {
  const entries = await readdir(target).catch(() => null);
  if (entries && entries.length > 0 && !entries.includes('pack.json')) {
    throw new InputError(`${target} holds files but no pack.json; give --out a new folder or an old pack`);
  }
}

export interface FileEntry {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** All files of a folder with size and checksum, by path. */
export async function listFiles(folder: string): Promise<FileEntry[]> {
  const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'))
    .sort();
  return Promise.all(
    names.map(async (name) => {
      const file = path.join(folder, name);
      return { path: name, bytes: (await stat(file)).size, sha256: await sha256Of(file) };
    }),
  );
}

export async function sha256Of(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file)) hash.update(chunk as Buffer);
  return hash.digest('hex');
}
