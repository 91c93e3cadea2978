import { nearestStations } from '../place/nearest-stations.ts';
import type { WinterTable } from '../records/winters.ts';
import type { DayNumber } from '../units/calendar.ts';
import { coldestNight } from '../winter/winter-minima.ts';

/** Neighbours asked where a regional freeze was: at most so many, none farther (km). */
const MOST_NEIGHBOURS = 8;
const WITHIN_KM = 200;

/**
 * For each station, a function from a winter to the nights of that winter's lowest minimum at its neighbours whose own
 * record of the winter is complete.
 */
export function regionalFreezes(
  stations: readonly { readonly id: string; readonly lat: number; readonly lon: number }[],
  winters: ReadonlyMap<string, WinterTable>,
): (id: string) => (winter: number) => DayNumber[] {
  const byId = new Map(stations.map((station) => [station.id, station]));
  return (id) => {
    const station = byId.get(id)!;
    const others = stations.filter((other) => other.id !== id);
    const neighbours = nearestStations(others, station, MOST_NEIGHBOURS, WITHIN_KM);
    return (winter) =>
      neighbours.flatMap(({ station: neighbour }) => {
        const table = winters.get(neighbour.id)!;
        const w = winter - (table.winter[0] ?? winter + 1);
        if (w < 0 || w >= table.winter.length || table.complete[w] === 0) return [];
        return coldestNight(table, w) ?? [];
      });
  };
}
