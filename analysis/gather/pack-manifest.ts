import { PACK_SCHEMA, type PackManifest, type PackStation } from '../records/pack.ts';
import type { WinterTable } from '../records/winters.ts';
import { hemisphereOf } from '../winter/winter-year.ts';
import { boxOf } from './pack-box.ts';

/** What whoever makes a pack says about it. */
export type PackDescription = Pick<PackManifest, 'id' | 'title' | 'invented' | 'sources'>;

/** What is known once all its files are there. */
export type PackOutcome = Pick<
  PackManifest,
  'sources' | 'files' | 'dropped' | 'doubtful' | 'notes' | 'place' | 'leave_out'
>;

/** `pack.json` of a pack with these stations and winters. */
export function packManifest(
  description: PackDescription,
  stations: readonly PackStation[],
  winters: ReadonlyMap<string, WinterTable>,
  { sources, files, dropped, doubtful, notes, place, leave_out }: PackOutcome,
): PackManifest {
  const hemispheres = [...new Set(stations.map(({ lat }) => hemisphereOf(lat)))];
  return {
    schema: PACK_SCHEMA,
    ...description,
    sources,
    hemisphere: hemispheres.length === 2 ? 'both' : hemispheres[0],
    bbox: boxOf(stations),
    winters: spanOf([...winters.values()]),
    stations: { count: stations.length },
    files,
    dropped: sorted(dropped),
    doubtful: sorted(doubtful),
    notes,
    place,
    ...(leave_out ? { leave_out } : {}),
  };
}

/** First and last winter that is complete at some station; of a pack without one, the winters that have any night. */
function spanOf(tables: readonly WinterTable[]): PackManifest['winters'] {
  const of = (counts: (table: WinterTable, w: number) => boolean) =>
    tables.flatMap((table) => [...table.winter].filter((_, w) => counts(table, w)));
  const complete = of((table, w) => table.complete[w] === 1);
  const winters = complete.length > 0 ? complete : of(() => true);
  return { first: winters.reduce((a, b) => Math.min(a, b)), last: winters.reduce((a, b) => Math.max(a, b)) };
}

function sorted(counts: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(Object.entries(counts).sort(([a], [b]) => (a < b ? -1 : 1)));
}
