import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { PackPlaces } from '../../analysis/records/pack.ts';
import { writePackIndex } from '../../data-scripts/pack/pack-index.ts';
import { serveSite } from '../../data-scripts/serve/site-server.ts';
import type { BenchRow } from './bench-row.ts';
import { ensureLargePack } from './large-pack.ts';
import { keepOffline, lookAround, type Errand } from './visitor-errands.ts';

const PAGE = process.env.PAGE || 'dist';
const PACKS = path.resolve('.cache/bench-packs/sites');
const MB = 1e6;

/** Packs as sites of three sizes would serve them; a demo pack is there when `npm test` has run. */
const SITES = [
  { id: 'sallowmere', title: 'Sallowmere', stations: 41, packs: '.cache/test-packs', asks: false },
  { id: 'region', title: 'Invented region 1', stations: 500, packs: PACKS, asks: true },
  { id: 'nation', title: 'Invented nation 1', stations: 5000, packs: PACKS, asks: false },
];

/** What a file is, by its address. */
const KINDS: readonly (readonly [string, RegExp])[] = [
  ['nights', /\/records\.duckdb$/],
  ['winters', /\/winters\//],
  ['grid', /\/grid\.bin$/],
  ['lists of the pack', /\/packs\//],
  ['database engine', /\/duckdb-[^/]+$/],
  ['page', /./],
];

/**
 * What visitors of sites of three sizes make their browser fetch, by Chromium's own log of the network, from the bundled
 * server with its compression. The packs are invented; that of 5,000 stations takes 1 GB of disk and some minutes, once.
 */
export async function benchVisitor(ids = SITES.map(({ id }) => id)): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const { id, title, stations, packs, asks } of SITES.filter((site) => ids.includes(site.id))) {
    if (packs === PACKS) await ensureLargePack(path.join(packs, id), { id, title, stations, whole: true });
    if (!existsSync(path.join(packs, id, 'pack.json')) || !existsSync(`${PAGE}/index.html`)) continue;
    await writePackIndex(packs);
    const site = await serveSite({ page: PAGE, packs });
    try {
      const url = `${site.url}?pack=${id}`;
      const errands = [
        ...(await lookAround(url, await farCodes(path.join(packs, id)))),
        ...(await keepOffline(url, title, asks)),
      ];
      rows.push(...errands.map((errand) => rowOf(stations, errand)));
    } finally {
      await site.close();
    }
  }
  return rows;
}

/** Two postcodes far from each other. */
async function farCodes(pack: string): Promise<[string, string]> {
  const { postcodes } = JSON.parse(await readFile(path.join(pack, 'places.json'), 'utf8')) as PackPlaces;
  const byLon = [...postcodes].sort((a, b) => a.lon - b.lon);
  const at = (share: number): string => byLon[Math.floor(share * byLon.length)].code;
  return [at(0.25), at(0.75)];
}

function rowOf(stations: number, { name, transfers }: Errand): BenchRow {
  const byKind = new Map<string, { count: number; bytes: number }>();
  for (const { url, bytes } of transfers) {
    const [kind] = KINDS.find(([, fits]) => fits.test(new URL(url).pathname))!;
    const sum = byKind.get(kind) ?? { count: 0, bytes: 0 };
    byKind.set(kind, { count: sum.count + 1, bytes: sum.bytes + bytes });
  }
  const parts = [...byKind].map(
    ([kind, { count, bytes }]) => `${kind} ${(bytes / MB).toFixed(3)} MB in ${count}`,
  );
  return {
    task: `${stations} stations: ${name}`,
    measured: transfers.reduce((sum, { bytes }) => sum + bytes, 0) / MB,
    unit: 'MB',
    budget: null,
    ratio: null,
    note: parts.join('; ') || 'nothing fetched',
  };
}
