import { eachLine, type LineBlock } from '../read/line-blocks.ts';
import { parseInventoryLine, parseStationLine } from './list-lines.ts';

/** Fewest years from first to last minimum that a station must have to be in the index. */
export const INDEX_MIN_YEARS = 20;

/** Longest line of either list that is looked at, characters; the archive's have 45 and 85. */
const LINE_MAX = 200;

/** Elements written for single days only (weather seen, sums over several days), not day after day. */
const OCCASIONAL = /^(W[TV]|MD|DA)/;

/** Elevation that stands for "not known", tenths of a metre. */
const UNKNOWN_ELEVATION = -32_768;

/**
 * Stations with {@link INDEX_MIN_YEARS} or more years of minima, in columns, so that the whole archive's index is about a
 * megabyte and can be kept as it is.
 */
export interface StationIndex {
  readonly count: number;
  /** One a line each, in the order of the columns. */
  readonly ids: string;
  readonly names: string;
  /** Ten-thousandths of a degree north and east. */
  readonly lat: Int32Array;
  readonly lon: Int32Array;
  /** Tenths of a metre; -32768 where not known. */
  readonly elevation: Int32Array;
  /** First and last year of minima and of maxima; 0 where there are none. */
  readonly tminFirst: Int16Array;
  readonly tminLast: Int16Array;
  readonly tmaxFirst: Int16Array;
  readonly tmaxLast: Int16Array;
  /** Years of all elements added up (but not what is noted now and then): what a record's size goes by. */
  readonly elementYears: Uint16Array;
}

interface Years {
  tmin: readonly [number, number] | null;
  tmax: readonly [number, number] | null;
  elementYears: number;
}

interface Kept extends Years {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
}

/** Cuts the two lists down while they stream by: first the whole inventory, then the station list. */
export class IndexBuilder {
  readonly #years = new Map<string, Years>();
  readonly #kept = new Map<string, Kept>();

  /** Lines of the inventory; lines that are none are passed over. */
  inventory(block: LineBlock): void {
    eachLine(block, (text, from, to) => {
      if (to - from > LINE_MAX) return;
      const entry = parseInventoryLine(text.slice(from, to));
      if (!entry) return;
      let years = this.#years.get(entry.id);
      if (!years) this.#years.set(entry.id, (years = { tmin: null, tmax: null, elementYears: 0 }));
      if (!OCCASIONAL.test(entry.element)) years.elementYears += entry.last - entry.first + 1;
      if (entry.element === 'TMIN') years.tmin = [entry.first, entry.last];
      if (entry.element === 'TMAX') years.tmax = [entry.first, entry.last];
    });
  }

  /** Stations that the inventory has told of so far. */
  get listed(): number {
    return this.#years.size;
  }

  /** Lines of the station list; stations with too few years of minima, and lines that are none, are passed over. */
  stations(block: LineBlock): void {
    eachLine(block, (text, from, to) => {
      if (to - from > LINE_MAX) return;
      const years = this.#years.get(text.slice(from, from + 11));
      if (!years?.tmin || years.tmin[1] - years.tmin[0] + 1 < INDEX_MIN_YEARS) return;
      const station = parseStationLine(text.slice(from, to));
      if (station) this.#kept.set(station.id, { ...station, ...years });
    });
  }

  /** The index, in the order of the ids. */
  finish(): StationIndex {
    const kept = [...this.#kept.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
    return {
      count: kept.length,
      ids: kept.map(({ id }) => id).join('\n'),
      names: kept.map(({ name }) => name.replaceAll('\n', ' ')).join('\n'),
      lat: Int32Array.from(kept, ({ lat }) => Math.round(lat * 1e4)),
      lon: Int32Array.from(kept, ({ lon }) => Math.round(lon * 1e4)),
      elevation: Int32Array.from(kept, ({ elevationM }) =>
        elevationM === null ? UNKNOWN_ELEVATION : Math.round(elevationM * 10),
      ),
      tminFirst: Int16Array.from(kept, ({ tmin }) => tmin?.[0] ?? 0),
      tminLast: Int16Array.from(kept, ({ tmin }) => tmin?.[1] ?? 0),
      tmaxFirst: Int16Array.from(kept, ({ tmax }) => tmax?.[0] ?? 0),
      tmaxLast: Int16Array.from(kept, ({ tmax }) => tmax?.[1] ?? 0),
      elementYears: Uint16Array.from(kept, ({ elementYears }) => Math.min(65_535, elementYears)),
    };
  }
}

/** Height of a station of the index, m; null where not known. */
export function elevationAt(index: StationIndex, at: number): number | null {
  const tenths = index.elevation[at]!;
  return tenths === UNKNOWN_ELEVATION ? null : tenths / 10;
}
