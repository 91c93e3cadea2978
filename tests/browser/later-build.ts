import { link, mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** A script or style whose name carries a hash; the engine's and the map's own workers change with their packages only. */
const RENAMED = /^assets\/(?!duckdb|maplibre).+-[\w-]{8}\.(js|css)$/;

/**
 * Makes of a built page what the next build of a changed source would be: other names of its scripts and styles, another list
 * in its worker, and a mark in the page; everything else as it is. Quicker than building twice.
 */
export async function makeLaterBuild(from: string, to: string): Promise<void> {
  const all = await readdir(from, { recursive: true, withFileTypes: true });
  const names = all
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(from.length + 1));
  const renamed = new Map(
    names.filter((name) => RENAMED.test(name)).map((name) => [baseName(name), laterName(baseName(name))]),
  );
  const anyName = new RegExp([...renamed.keys()].map((name) => name.replace(/[.$]/g, '\\$&')).join('|'), 'g');
  const inLater = (text: string): string => text.replace(anyName, (name) => renamed.get(name)!);
  for (const name of names) {
    const target = join(to, inLater(name));
    await mkdir(dirname(target), { recursive: true });
    if (RENAMED.test(name) || name === 'sw.js' || name === 'index.html') {
      const text = inLater(await readFile(join(from, name), 'utf8'));
      await writeFile(target, marked(name, text));
    } else if (!/(\.js|\.css|\.html)\.(br|gz)$/.test(name) || /duckdb|maplibre/.test(name)) {
      await link(join(from, name), target);
    }
  }
}

function marked(name: string, text: string): string {
  if (name === 'index.html') return text.replace('<head>', '<head><meta name="build" content="later" />');
  if (name === 'sw.js') return text.replace(/version:"[0-9a-f]+"/, 'version:"later"');
  return text;
}

function baseName(name: string): string {
  return name.slice(name.lastIndexOf('/') + 1);
}

function laterName(name: string): string {
  return name.replace(/-([\w-]{8})(\.\w+)$/, (_, hash: string, end: string) => `-${hash.slice(1)}Z${end}`);
}
