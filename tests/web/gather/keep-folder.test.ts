import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import type { PackIndexEntry } from '../../../analysis/records/pack.ts';
import type { FolderFile } from '../../../web/gather/brought-folder.ts';
import { buildInventedPack } from '../../data-scripts/commands/invented-pack.ts';

const put = new Map<string, unknown>();
vi.mock('../../../web/kept/kept-packs.ts', () => ({
  keepWhole: async (
    entry: PackIndexEntry,
    own: boolean,
    write: (take: (name: string, content: unknown) => Promise<void>) => Promise<void>,
  ) => {
    put.clear();
    await write(async (name, content) => void put.set(name, content));
    return { entry, own };
  },
}));
const { keepFolder } = await import('../../../web/gather/keep-folder.ts');

let work: string;
let files: FolderFile[];
beforeAll(async () => {
  const built = await buildInventedPack();
  work = built.work;
  files = readdirSync(built.pack, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => {
      const full = path.join(entry.parentPath, entry.name);
      const inside = path.relative(built.pack, full).split(path.sep).join('/');
      return { path: `brought/${inside}`, file: new File([readFileSync(full)], entry.name) };
    });
}, 60_000);
afterAll(() => rm(work, { recursive: true, force: true }));

const without = (name: string): FolderFile[] => files.filter((file) => file.path !== `brought/${name}`);
const withFile = (name: string, content: BlobPart): FolderFile[] => [
  ...without(name),
  { path: `brought/${name}`, file: new File([content], 'x') },
];
const manifest = async (): Promise<Record<string, unknown>> =>
  JSON.parse(await files.find((file) => file.path === 'brought/pack.json')!.file.text()) as Record<
    string,
    unknown
  >;

it('keeps a pack folder as it is under an id of its own', async () => {
  const entry = await keepFolder(files, 'brought/');
  expect(entry).toMatchObject({ stations: 4, title: 'pack', invented: false });
  expect(entry.id).toMatch(/^own-[0-9a-f]{8}$/);
  expect([...put.keys()].sort()).toEqual(files.map((file) => file.path.slice('brought/'.length)).sort());
  expect(JSON.parse(put.get('pack.json') as string)).toEqual({ ...(await manifest()), id: entry.id });
});

it('refuses a folder in which something is missing, changed or of another version, naming the file', async () => {
  await expect(keepFolder(without('land.json'), 'brought/')).rejects.toThrow(
    /land\.json is listed .* but missing/,
  );
  await expect(keepFolder(withFile('land.json', '{}'), 'brought/')).rejects.toThrow(/land\.json has 2 bytes/);
  const stations = await files.find((file) => file.path.endsWith('stations.json'))!.file.text();
  const changed = stations.replace('31', '32');
  expect(changed).toHaveLength(stations.length);
  await expect(keepFolder(withFile('stations.json', changed), 'brought/')).rejects.toThrow(/checksum/);
  const told = await manifest();
  const say = (change: object): Promise<unknown> =>
    keepFolder(withFile('pack.json', JSON.stringify({ ...told, ...change })), 'brought/');
  await expect(say({ schema: 99 })).rejects.toThrow(/schema version 99/);
  await expect(say({ bbox: ['a', 0, 0, 0] })).rejects.toThrow(/"bbox"/);
  await expect(say({ files: [] })).rejects.toThrow(/does not list stations\.json/);
  await expect(keepFolder(withFile('pack.json', '{'), 'brought/')).rejects.toThrow(/not valid JSON/);
});

it('refuses outlines that are none, though their checksum is right', async () => {
  const content = '{"type":"FeatureCollection","features":[{}]}';
  const told = await manifest();
  const listed = (told.files as { path: string }[]).map((entry) =>
    entry.path === 'land.json'
      ? { ...entry, bytes: content.length, sha256: createHash('sha256').update(content).digest('hex') }
      : entry,
  );
  const folder = [
    ...withFile('land.json', content).filter(({ path: at }) => at !== 'brought/pack.json'),
    { path: 'brought/pack.json', file: new File([JSON.stringify({ ...told, files: listed })], 'x') },
  ];
  await expect(keepFolder(folder, 'brought/')).rejects.toThrow(/^land\.json: feature 1 /);
});
