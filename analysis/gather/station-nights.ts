import { cleanDaily } from '../clean/clean-daily.ts';
import { cleanHourly } from '../clean/clean-hourly.ts';
import { fewMaximaNote, hasFewMaxima } from '../night/few-maxima.ts';
import { mergeNights } from '../night/merge-nights.ts';
import { nightsFromDaily } from '../night/nights-from-daily.ts';
import { nightsFromHourly } from '../night/nights-from-hourly.ts';
import type { NightTable } from '../records/nights.ts';
import type { PackStation } from '../records/pack.ts';
import type { DroppedValue } from '../records/series.ts';
import type { LocatedStation } from '../records/station.ts';
import { isDaily, isHourly, type RawReadings } from './raw-readings.ts';

/** One station's record after cleaning, as nights. */
export interface StationNights {
  readonly nights: NightTable;
  readonly basis: PackStation['basis'];
  readonly dropped: readonly DroppedValue[];
  readonly doubtful: readonly DroppedValue[];
  readonly notes: readonly string[];
}

/** Cleans a station's readings and turns them into nights: from hourly readings where there are any, else from daily ones. */
export function stationNights(station: LocatedStation, readings: readonly RawReadings[]): StationNights {
  const hourly = readings.filter(isHourly).map((raw) => ({ ...raw, station }));
  const daily = readings.filter(isDaily).map((raw) => ({ ...raw, station }));
  const cleanedHourly = hourly.length > 0 ? cleanHourly(hourly) : null;
  const cleanedDaily = daily.length > 0 ? cleanDaily(daily) : null;
  const fromHourly = cleanedHourly && nightsFromHourly(cleanedHourly.series);
  const fromDaily = cleanedDaily && nightsFromDaily(cleanedDaily.series);
  const fewMaxima = cleanedDaily !== null && hasFewMaxima(cleanedDaily.series);
  const cleaned = [cleanedHourly, cleanedDaily].filter((part) => part !== null);
  return {
    nights: fromHourly && fromDaily ? mergeNights(fromHourly, fromDaily) : (fromHourly ?? fromDaily!),
    basis: fromHourly ? (fromDaily ? 'both' : 'hourly') : 'daily',
    dropped: cleaned.flatMap((part) => part.dropped),
    doubtful: cleaned.flatMap((part) => part.doubtful),
    notes: [
      ...cleaned.flatMap((part) => part.notes),
      ...(fewMaxima ? [fewMaximaNote(cleanedDaily.series)] : []),
    ],
  };
}
