import type { WinterSource } from '../../analysis/answer/find-subject.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import type { PackStation } from '../../analysis/records/pack.ts';
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

  constructor(
    private readonly packUrl: string,
    readonly stations: readonly PackStation[],
    private readonly fetcher: TileFetch,
  ) {}

  /**
   * Opens a pack by its list of stations.
   * @throws InputError when the list can't be loaded
   */
  static async open(packUrl: string, fetcher: TileFetch): Promise<WinterTiles> {
    const bytes = await load(new URL('stations.json', packUrl).href, fetcher);
    try {
      return new WinterTiles(packUrl, JSON.parse(new TextDecoder().decode(bytes)) as PackStation[], fetcher);
    } catch {
      throw new InputError('stations.json arrived damaged: it is not the JSON it should be.');
    }
  }

  /** @throws InputError when the tile can't be loaded, or doesn't hold the station */
  async winters({ id, tile }: PackStation): Promise<WinterTable> {
    const table = (await this.#tile(tile)).get(id);
    if (!table) throw new InputError(`Tile ${tile} holds no winters of station ${id}.`);
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
    throw new InputError(`${fileName(url)} broke off while it was loading.`);
  }
}
