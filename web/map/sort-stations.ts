import { t } from '../../analysis/language/t.ts';
import type { MapPeriod, MapStation } from './station-features.ts';

export type SortKey = 'name' | 'period' | 'winters' | 'elevation';

export const SORT_KEYS: readonly { key: SortKey; label: string; numeric: boolean }[] = [
  { key: 'name', label: t`Station`, numeric: false },
  { key: 'period', label: t`About`, numeric: false },
  { key: 'winters', label: t`Complete winters`, numeric: true },
  { key: 'elevation', label: t`Height`, numeric: true },
];

/** What an answer sorts by: its period, bounds by their frequent end; no answer sorts last as `null`. */
function periodRank(period: MapPeriod | undefined): number | null {
  if (!period) return null;
  const { headline } = period;
  if (headline.basis === 'beyond') return headline.low ?? headline.period ?? Infinity;
  if (headline.basis === 'not seen') return Number.MAX_VALUE;
  return headline.period ?? Infinity;
}

/** Stations in the order of one column; what is unknown comes last either way, ties by name. */
export function sortStations(
  stations: readonly MapStation[],
  periods: ReadonlyMap<string, MapPeriod> | null,
  key: SortKey,
  descending: boolean,
): MapStation[] {
  const value = (station: MapStation): number | null => {
    if (key === 'winters') return station.winters.complete;
    if (key === 'elevation') return station.elevation_m;
    return periodRank(periods?.get(station.id));
  };
  const sign = descending ? -1 : 1;
  const byName = (a: MapStation, b: MapStation): number => a.name.localeCompare(b.name, 'en');
  return [...stations].sort((a, b) => {
    if (key === 'name') return sign * byName(a, b);
    const [x, y] = [value(a), value(b)];
    if (x === null || y === null) return x === y ? byName(a, b) : x === null ? 1 : -1;
    return sign * (x - y) || byName(a, b);
  });
}
