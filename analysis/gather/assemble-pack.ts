import type { FeatureCollection } from 'geojson';
import { elevationAt, encodeGrid, type PlaceGrid } from '../records/grid.ts';
import type { PackManifest, PackPlaces, PackStation } from '../records/pack.ts';
import { packTiles } from '../records/pack-tiles.ts';
import type { WinterTable } from '../records/winters.ts';
import { t } from '../language/t.ts';
import type { ComputedStation } from './compute-station.ts';
import { judgedWithNeighbours } from './judge-winters.ts';
import { packManifest, type PackDescription } from './pack-manifest.ts';
import { packStation } from './pack-station.ts';
import { placeModel } from './place-model.ts';
import { ReasonCount } from './reason-count.ts';
import { stationsCsv, wintersCsv, type Table } from './table-csv.ts';
import { winterTiles } from './winter-tiles.ts';

/** A finished pack whose stations are to stand in the new one too. */
export interface JoinedPack {
  readonly manifest: PackManifest;
  readonly stations: readonly PackStation[];
  readonly winters: ReadonlyMap<string, WinterTable>;
  readonly places: PackPlaces | null;
  readonly grid: PlaceGrid | null;
}

/** A computed station whose lines of the large tables were put elsewhere. */
export type WithoutLines = Omit<ComputedStation, 'nightsCsv' | 'droppedCsv'>;

export interface PackParts {
  readonly description: PackDescription;
  readonly computed: readonly WithoutLines[];
  readonly joined: JoinedPack | null;
  /** Outlines of the map for the box of all stations. */
  readonly land: FeatureCollection;
  /** Distance to the nearest shore, km; infinite where no shore is known. */
  readonly coastKm: (place: { readonly lat: number; readonly lon: number }) => number;
  readonly places: PackPlaces | null;
  /** Sentences that came up before. */
  readonly notes: readonly string[];
}

/** A pack but for its database and the list of its files. */
export interface AssembledPack {
  /** Files by their path in the pack. */
  readonly files: ReadonlyMap<string, Uint8Array | string>;
  /** Lines of the database's small tables; the large ones are those of the stations computed. */
  readonly tables: Readonly<Record<Extract<Table, 'stations' | 'winters'>, string>>;
  /** Stations of the joined pack whose rows of the large tables belong into this one. */
  readonly joinedStations: readonly string[];
  readonly stations: number;
  /** `pack.json`, once its files are known. */
  manifest(files: PackManifest['files']): PackManifest;
}

/**
 * Puts a pack together from stations just computed and, where there is one, a finished pack to join: all stations are
 * neighbours of each other, and the model of places is fitted to all. A station that stands in both is the one just computed.
 */
export function assemblePack(parts: PackParts): AssembledPack {
  const { computed, description, coastKm } = parts;
  const own = new Set(computed.map(({ built }) => built.station.id));
  const joined = (parts.joined?.stations ?? []).filter(({ id }) => !own.has(id));
  const joinedWinters = new Map(joined.map(({ id }) => [id, parts.joined!.winters.get(id)!]));
  const winters = new Map([
    ...joinedWinters,
    ...judgedWithNeighbours(
      computed.map(({ built }) => built),
      joined.map((station) => ({ ...station, winters: joinedWinters.get(station.id)! })),
    ),
  ]);
  const grid = parts.joined?.grid ?? null;
  const located = computed.map(({ built: { station, basis } }) => ({
    basis,
    station: { ...station, elevationM: station.elevationM ?? heightOn(grid, station.lat, station.lon) },
  }));
  const tiles = packTiles([...joined, ...located.map(({ station }) => station)]);
  const stations = [
    ...joined.map((station) => ({ ...station, tile: tiles.get(station.id)! })),
    ...located.map(({ station, basis }) =>
      packStation(station, basis, coastKm(station), winters.get(station.id)!, tiles.get(station.id)!),
    ),
  ];
  const place = placeModel(stations, winters);
  // Always there: who asks for it should not have to ask a server whether there is one.
  const places = parts.places ?? parts.joined?.places ?? { postcodes: [], towns: [] };
  const files = new Map<string, Uint8Array | string>([
    ['stations.json', `${JSON.stringify(stations)}\n`],
    ['land.json', `${JSON.stringify(parts.land)}\n`],
    ['places.json', `${JSON.stringify(places)}\n`],
    ...(grid ? [['grid.bin', encodeGrid(grid)] as const] : []),
    ...winterTiles(stations, winters),
  ]);
  return {
    files,
    tables: {
      stations: stationsCsv(stations),
      winters: wintersCsv(winters),
    },
    joinedStations: joined.map(({ id }) => id),
    stations: stations.length,
    manifest: (listed) =>
      packManifest(description, stations, winters, {
        sources: description.sources,
        files: listed,
        dropped: counts(computed, 'dropped', parts.joined?.manifest.dropped),
        doubtful: counts(computed, 'doubtful', parts.joined?.manifest.doubtful),
        notes: [...parts.notes, ...notesOf(parts, joined.length)],
        place,
      }),
  };
}

function heightOn(grid: PlaceGrid | null, lat: number, lon: number): number | null {
  const height = grid && elevationAt(grid, lat, lon);
  return height === null ? null : Math.round(height);
}

function counts(
  computed: readonly WithoutLines[],
  which: 'dropped' | 'doubtful',
  before: Readonly<Record<string, number>> = {},
): Record<string, number> {
  const count = new ReasonCount(before);
  for (const station of computed) count.add(station[which]);
  return count.counts;
}

function notesOf({ computed, joined }: PackParts, taken: number): string[] {
  const notes = computed.flatMap(({ built, notes }) =>
    notes.map((note) => t`Station ${built.station.id}: ${note}`),
  );
  if (!joined) return notes;
  const replaced = joined.stations.length - taken;
  return [
    ...notes,
    t`${taken} stations of “${joined.manifest.title}” stand in this pack as they do there.`,
    ...(replaced > 0
      ? [t`${replaced} stations of “${joined.manifest.title}” were replaced by own records of the same id.`]
      : []),
    ...joined.manifest.notes,
  ];
}
