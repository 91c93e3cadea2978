import type { WinterSource } from '../../analysis/answer/place-histories.ts';
import { t } from '../../analysis/language/t.ts';
import { decodeGrid, type PlaceGrid } from '../../analysis/records/grid.ts';
import type { PlaceParameters } from '../../analysis/place/place-parameters.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { checkManifest, type PackManifest, type PackStation } from '../../analysis/records/pack.ts';
import { decodeWinterTile } from '../../analysis/records/winter-tile.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { fileName, reach } from '../data/reach.ts';

/** The part of `fetch` this needs. */
export type TileFetch = (url: string) => Promise<{
  readonly ok: boolean;
  readonly status: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}>;

/**
 * Winters of one pack over HTTP. Each tile is fetched and decoded once and kept; callers that ask at the same time share
 * the work. A tile that failed is forgotten, so that asking again tries again.
 */
export class WinterTiles implements WinterSource {
  readonly #tiles = new Map<string, Promise<Map<string, WinterTable>>>();
  #grid: Promise<PlaceGrid | null> | null = null;

  constructor(
    private readonly packUrl: string,
    readonly stations: readonly PackStation[],
    private readonly manifest: PackManifest,
    private readonly fetcher: TileFetch,
  ) {}

  /**
   * Opens a pack by its manifest and its list of stations.
   * @throws InputError when one of them can't be loaded
   */
  static async open(packUrl: string, fetcher: TileFetch): Promise<WinterTiles> {
    const json = async (name: string): Promise<unknown> => {
      const bytes = await load(new URL(name, packUrl).href, fetcher);
      try {
        return JSON.parse(new TextDecoder().decode(bytes));
      } catch {
        throw new InputError(t`${name} arrived damaged: it is not the JSON it should be.`);
      }
    };
    const [stations, manifest] = await Promise.all([json('stations.json'), json('pack.json')]);
    return new WinterTiles(
      packUrl,
      stations as readonly PackStation[],
      checkManifest(manifest, 'pack.json'),
      fetcher,
    );
  }

  get place(): PlaceParameters | null {
    return this.manifest.place ?? null;
  }

  /** @throws InputError when the grid can't be loaded */
  grid(): Promise<PlaceGrid | null> {
    if (!this.#grid) {
      const name = 'grid.bin';
      this.#grid = this.manifest.files.some(({ path }) => path === name)
        ? load(new URL(name, this.packUrl).href, this.fetcher).then((bytes) => decodeGrid(bytes, name))
        : Promise.resolve(null);
      this.#grid.catch(() => (this.#grid = null));
    }
    return this.#grid;
  }

  /** @throws InputError when the tile can't be loaded, or doesn't hold the station */
  async winters({ id, tile }: PackStation): Promise<WinterTable> {
    const table = (await this.#tile(tile)).get(id);
    if (!table) throw new InputError(t`Tile ${tile} holds no winters of station ${id}.`);
    return table;
  }

  #tile(name: string): Promise<Map<string, WinterTable>> {
    let tile = this.#tiles.get(name);
    if (!tile) {
      const file = `winters/${name}.arrow`;
      tile = load(new URL(file, this.packUrl).href, this.fetcher).then((bytes) =>
        decodeWinterTile(bytes, file),
      );
      tile.catch(() => this.#tiles.delete(name));
      this.#tiles.set(name, tile);
    }
    return tile;
  }
}

async function load(url: string, fetcher: TileFetch): Promise<Uint8Array> {
  const response = await reach(url, fetcher);
  try {
    return new Uint8Array(await response.arrayBuffer());
  } catch {
    throw new InputError(t`${fileName(url)} broke off while it was loading.`);
  }
}
