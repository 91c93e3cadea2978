import type { LocatedStation } from '../records/station.ts';
import type { DroppedValue } from '../records/series.ts';
import { KnownNights } from '../winter/known-nights.ts';
import { summariseWinters } from '../winter/summarise-winters.ts';
import { hemisphereOf } from '../winter/winter-year.ts';
import { droppedCsv } from './dropped-csv.ts';
import type { BuiltStation } from './judge-winters.ts';
import { nightCsv } from './night-csv.ts';
import type { RawReadings } from './raw-readings.ts';
import { stationNights } from './station-nights.ts';

/** One station's part of a pack: its winters, and its lines of the tables of nights and of dropped values. */
export interface ComputedStation {
  readonly built: BuiltStation;
  readonly nightsCsv: string;
  readonly droppedCsv: string;
  readonly dropped: readonly DroppedValue[];
  readonly doubtful: readonly DroppedValue[];
  /** Sentences about the station. */
  readonly notes: readonly string[];
}

/** Cleans a station's readings and computes nights and winters. */
export function computeStation(station: LocatedStation, readings: readonly RawReadings[]): ComputedStation {
  const { nights, basis, dropped, doubtful, notes } = stationNights(station, readings);
  const hemisphere = hemisphereOf(station.lat);
  return {
    built: {
      station,
      basis,
      hemisphere,
      winters: summariseWinters(nights, hemisphere),
      known: new KnownNights(nights),
    },
    nightsCsv: nightCsv(station.id, nights, hemisphere),
    droppedCsv: droppedCsv(dropped, 'dropped') + droppedCsv(doubtful, 'doubtful'),
    dropped,
    doubtful,
    notes,
  };
}
