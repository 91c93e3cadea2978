import type { FeatureCollection, Point } from 'geojson';
import type { Headline } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import { periodClassOf } from '../charts/period-classes.ts';
import { countedWinters } from '../format/estimated.ts';
import { formatElevation } from '../format/numbers.ts';
import { formatHeadline } from '../format/periods.ts';
import type { TemperatureUnit } from '../format/unit.ts';

/** What the map knows of a station, as `stations.json` has it. */
export interface MapStation {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevation_m: number | null;
  readonly winters: {
    readonly complete: number;
    readonly first: number | null;
    readonly last: number | null;
  };
}

/** A station's answer for the type and level shown. */
export interface MapPeriod {
  readonly winters: number;
  readonly headline: Headline;
}

/** Name of the image that draws a station of a class. */
export function markImage(classId: string): string {
  return `station-${classId}`;
}

/** Stations as points with the image of their class; before any answer is there every station is a plain dot. */
export function stationFeatures(
  stations: readonly MapStation[],
  periods: ReadonlyMap<string, MapPeriod> | null,
): FeatureCollection<Point> {
  return {
    type: 'FeatureCollection',
    features: stations.map(({ id, lat, lon }) => {
      const shown = periods ? periodClassOf(periods.get(id)?.headline ?? null) : null;
      return {
        type: 'Feature',
        id,
        properties: {
          id,
          icon: markImage(shown?.id ?? 'waiting'),
          // Colder answers are drawn last, so that a crowd of stations never hides them.
          order: shown?.ramp ?? 0,
        },
        geometry: { type: 'Point', coordinates: [lon, lat] },
      };
    }),
  };
}

/** What pointing at a station says: name, answer, winters. */
export interface StationWords {
  readonly name: string;
  readonly answer: string;
  readonly record: string;
}

/** Words for the readout, the live region and the list. */
export function stationWords(
  station: MapStation,
  periods: ReadonlyMap<string, MapPeriod> | null,
  unit: TemperatureUnit,
): StationWords {
  const period = periods?.get(station.id);
  const { complete, first, last } = station.winters;
  const record = [countedWinters(complete, false)];
  if (first !== null && last !== null) record.push(t`${first} to ${last}`);
  if (station.elevation_m !== null) record.push(formatElevation(station.elevation_m, unit));
  return {
    name: station.name,
    answer: period
      ? formatHeadline(period.headline, period.winters)
      : periods
        ? t`no complete winter on record`
        : t`not yet worked out`,
    record: record.join(', '),
  };
}

/** How many stations fall in each class, by class id; `null` while the answers are worked out. */
export function classCounts(
  stations: readonly MapStation[],
  periods: ReadonlyMap<string, MapPeriod> | null,
): ReadonlyMap<string, number> | null {
  if (!periods) return null;
  const counts = new Map<string, number>();
  for (const { id } of stations) {
    const key = periodClassOf(periods.get(id)?.headline ?? null).id;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}
