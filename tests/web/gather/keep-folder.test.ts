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

/** The folder with a file changed or added as whoever made the pack would: listed with its size and checksum. */
async function listedWith(name: string, content: string): Promise<FolderFile[]> {
  const told = await manifest();
  const sha256 = createHash('sha256').update(content).digest('hex');
  const others = (told.files as { path: string }[]).filter((entry) => entry.path !== name);
  const listed = [...others, { path: name, bytes: content.length, sha256 }];
  return [
    ...withFile(name, content).filter(({ path: at }) => at !== 'brought/pack.json'),
    { path: 'brought/pack.json', file: new File([JSON.stringify({ ...told, files: listed })], 'x') },
  ];
}

it.each([
  ['land.json', '{"type":"FeatureCollection","features":[{}]}', /^land\.json: feature 1 /],
  ['places.json', '{"postcodes":[{}],"towns":[]}', /^places\.json/],
  ['grid.bin', 'no grid at all', /^grid\.bin/],
])('refuses a %s that is none, though its checksum is right', async (name, content, told) => {
  await expect(keepFolder(await listedWith(name, content), 'brought/')).rejects.toThrow(told);
});

it('refuses a station whose winters are not in its tile', async () => {
  const text = await files.find((file) => file.path.endsWith('stations.json'))!.file.text();
  const folder = await listedWith('stations.json', text.replace('ZZTEST1', 'ZZTEST9'));
  await expect(keepFolder(folder, 'brought/')).rejects.toThrow(/arrow: station ZZTEST9 is missing\.$/);
});
