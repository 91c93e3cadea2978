import { TABLES, type Table } from '../../analysis/gather/table-csv.ts';
import { t } from '../../analysis/language/t.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { checkManifest, type PackManifest } from '../../analysis/records/pack.ts';
import { DatabaseWriter, removeHalfWritten } from '../engine/database-writer.ts';
import { addToKept } from '../kept/kept-packs.ts';
import { keptFile } from '../kept/pack-files.ts';
import { isNoRoom, readRoom } from '../kept/room.ts';
import { sha256Of } from '../kept/sha256.ts';

/** A pack's database of nights. */
export const DATABASE = 'records.duckdb';
/** Folder in a kept pack where the lines of its tables wait for the database that is made of them. */
const UNWRITTEN = 'unwritten';

/** Lines of all tables of a database. */
export type Lines = Readonly<Record<Table, Blob>>;

/** The files by which a pack keeps its lines until they are written. */
export function unwrittenFiles(lines: Lines): { path: string; content: Blob }[] {
  return TABLES.map((table) => ({ path: pathOf(table), content: lines[table] }));
}

/**
 * Writes the database of a kept pack whose lines still wait, and adds it to the pack: until then the pack is whole without it.
 * Does nothing where none wait. What ends in the middle is done again at the next call.
 * @param packUrl absolute address of its folder, ending in `/`
 * @param begun called where there is something to write
 * @throws InputError in one sentence
 */
export async function writeNights(packUrl: string, begun: () => void): Promise<void> {
  if (!(await keptFile(packUrl + pathOf('nights')))) return;
  begun();
  await oneAtATime(async () => {
    const [lines, kept] = [await linesOf(packUrl), await keptFile(`${packUrl}pack.json`)];
    // Another page was faster.
    if (!lines || !kept) return;
    const manifest = checkManifest(JSON.parse(await kept.text()), 'pack.json');
    const writer = new DatabaseWriter();
    try {
      const database = await writer.write(lines, null);
      const described = await withDatabase(manifest, database);
      const files = [
        { path: DATABASE, content: database },
        { path: 'pack.json', content: described },
      ];
      await addToKept(manifest.id, files, UNWRITTEN);
    } catch (error) {
      if (error instanceof InputError) throw error;
      throw (await lacksRoom(error, lines)) ? noRoom(manifest.title) : unwritten(manifest.title, error);
    } finally {
      await writer.close();
    }
  });
}

/** Why the engine could not write, in a sentence: its own words are for programmers. */
export function unwritten(title: string, error: unknown): InputError {
  const reason = error instanceof Error ? error.message.split('\n')[0] : String(error);
  return new InputError(t`The nights of “${title}” could not be written: ${reason}`);
}

/** The engine can't tell why it found no room. */
async function lacksRoom(error: unknown, lines: Lines): Promise<boolean> {
  const room = await readRoom();
  const bytes = TABLES.reduce((sum, table) => sum + lines[table].size, 0);
  return isNoRoom(error) || (room !== null && room.used + bytes > room.allowed);
}

function noRoom(title: string): InputError {
  return new InputError(
    t`This browser has no room for the nights of “${title}”. The rest of the pack stays; the nights are written once there is room.`,
  );
}

/** One at a time over all pages, since what was left half-written is removed first. */
export function oneAtATime<T>(work: () => Promise<T>): Promise<T> {
  const clean = async (): Promise<T> => {
    await removeHalfWritten().catch(() => {});
    return work();
  };
  return navigator.locks
    ? (navigator.locks.request('citrus-winters gathering', clean) as Promise<T>)
    : clean();
}

async function withDatabase(manifest: PackManifest, database: Blob): Promise<string> {
  const entry = { path: DATABASE, bytes: database.size, sha256: await sha256Of(database) };
  const files = [...manifest.files.filter(({ path }) => path !== DATABASE), entry];
  return `${JSON.stringify({ ...manifest, files: files.sort((a, b) => (a.path < b.path ? -1 : 1)) })}\n`;
}

async function linesOf(packUrl: string): Promise<Lines | null> {
  const found: [Table, Blob][] = [];
  for (const table of TABLES) {
    const file = await keptFile(packUrl + pathOf(table));
    if (!file) return null;
    found.push([table, file]);
  }
  return Object.fromEntries(found) as Record<Table, Blob>;
}

function pathOf(table: Table): string {
  return `${UNWRITTEN}/${table}.csv`;
}
