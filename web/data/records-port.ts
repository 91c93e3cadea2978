import type { PlaceRequest } from '../../analysis/answer/find-subject.ts';
import type { KeptNights } from '../../analysis/records/kept-nights.ts';
import { nightsThatHit } from '../engine/night-questions.ts';
import { estimatedNightsThatHit, keptNightsOf, nightsOfPlace } from '../engine/place-night-questions.ts';
import { RecordsDatabase } from '../engine/records-database.ts';
import { isOwnPack } from '../gather/own-pack-id.ts';
import type { LaterPort, RecordsPort } from '../state/ports.ts';

/** What a place's nights are: a station's in the database, or estimated ones. */
type Nights = { readonly stationId: string } | { readonly estimated: KeptNights };

/** Resolves once the nights of a pack are in its database; `begun` is called where they have to be written first. */
type Written = (packUrl: string, begun: () => void) => Promise<void>;

/** Only packs of one's own are ever without. */
const ownWritten: Written = async (packUrl, begun) => {
  if (!isOwnPack(packUrl.split('/').at(-2) ?? '')) return;
  const { nightsToCome } = await import('../gather/nights-to-come.svelte.ts');
  await nightsToCome.written(packUrl, begun);
};

/**
 * The database of the pack at `packUrl` (absolute, ending in `/`), for parts that ask about nights. The nights of the place
 * asked about last are kept, so that a moved slider reads nothing again.
 * @param worker knows how the nights of a point between stations are put together
 */
export function makeRecordsPort(
  packUrl: string,
  worker: Pick<LaterPort, 'nightsSource'>,
  database = new RecordsDatabase(),
  written: Written = ownWritten,
): RecordsPort {
  let last: { readonly key: string; readonly nights: Promise<Nights> } | null = null;

  async function findNights(place: PlaceRequest): Promise<Nights> {
    const source = await worker.nightsSource({ packUrl, place });
    return 'plan' in source ? { estimated: await nightsOfPlace(database, source.plan) } : source;
  }

  function nightsOf(place: PlaceRequest): Promise<Nights> {
    if (place.by === 'station') return Promise.resolve({ stationId: place.id });
    const key = JSON.stringify(place);
    if (last?.key === key) return last.nights;
    const nights = findNights(place);
    last = { key, nights };
    nights.catch(() => (last = last?.nights === nights ? null : last));
    return nights;
  }

  let lastKept: { readonly key: string; readonly nights: Promise<KeptNights> } | null = null;

  async function readKept(place: PlaceRequest): Promise<KeptNights> {
    const nights = await nightsOf(place);
    return 'estimated' in nights ? nights.estimated : keptNightsOf(database, nights.stationId);
  }

  return {
    open: async (onProgress) => {
      await written(packUrl, () => onProgress({ loaded: 0, total: null, writing: true }));
      await database.open(packUrl, onProgress);
    },
    hitNights: async ({ place, hours, limitC, gainCalmC, gainWindyC }) => {
      const nights = await nightsOf(place);
      const limit = { hours, limitC, gains: { calmC: gainCalmC, windyC: gainWindyC } };
      return 'estimated' in nights
        ? estimatedNightsThatHit(nights.estimated, limit)
        : nightsThatHit(database, { ...nights, ...limit });
    },
    keptNights: (place) => {
      const key = JSON.stringify(place);
      if (lastKept?.key === key) return lastKept.nights;
      const nights = readKept(place);
      lastKept = { key, nights };
      nights.catch(() => (lastKept = lastKept?.nights === nights ? null : lastKept));
      return nights;
    },
    run: (sql) => database.run(sql),
    close: () => void database.close(),
  };
}
