import { eachCurveNight } from '../../analysis/night/curve-nights.ts';
import { sustainedOnCurve } from '../../analysis/night/curve-sustained.ts';
import { MINIMUM_FEATURE_COUNT, minimumFeatures } from '../../analysis/night/minimum-features.ts';
import { eachMinimumNight } from '../../analysis/night/minimum-nights.ts';
import { NIGHT_FEATURE_COUNT, nightFeatures } from '../../analysis/night/night-features.ts';
import { kindByTemperatures } from '../../analysis/night/night-kind.ts';
import { nightsFromHourly } from '../../analysis/night/nights-from-hourly.ts';
import { MISSING_HUNDREDTHS, SUSTAINED_COUNT } from '../../analysis/records/nights.ts';
import { civilDate, type DayNumber } from '../../analysis/units/calendar.ts';
import { bookedDays } from './booked-days.ts';
import type { AirportRecord } from './read-airports.ts';

/** One night seen twice: by its readings and by the daily record of the same thermometer. Temperatures are °C. */
export interface SampleNight {
  readonly airport: string;
  readonly place: string;
  readonly day: DayNumber;
  /** July to June, by the year of its January: all airports lie north of the equator. */
  readonly winter: number;
  /** S_h from the readings, for each of SUSTAINED_HOURS. */
  readonly observed: Float64Array;
  /** S_h of the uncorrected curve through the booked days. */
  readonly curve: Float64Array;
  readonly features: Float64Array;
  /** What is left of them without the maxima. */
  readonly minimumFeatures: Float64Array;
  /** Booked maxima of the days before and after the night's midnight. */
  readonly tmaxBefore: number;
  readonly tmaxAfter: number;
  /** By temperatures alone (index into NIGHT_KINDS): what a daily record knows. */
  readonly kind: number;
  /** By the wind around the lowest reading; -1 without wind. */
  readonly windKind: number;
  /** Mean wind of the days before and after midnight, m/s, NaN unknown. */
  readonly dayWindMs: readonly [number, number];
}

/** All nights of an airport that are whole in the readings and in the daily record with its neighbours. */
export function sampleNights(record: AirportRecord): SampleNight[] {
  const { airport, series } = record;
  const days = bookedDays(record);
  const seen = nightsFromHourly(series);
  const hasWind = series.windMs.some((wind) => !Number.isNaN(wind));
  const nights: SampleNight[] = [];
  const fromMinima = new Map<number, Float64Array>();
  eachMinimumNight(days, (i, course) => {
    const features = new Float64Array(MINIMUM_FEATURE_COUNT);
    minimumFeatures(course, features);
    fromMinima.set(i, features);
  });
  eachCurveNight(days, (i, curve, tminTwoBefore, filled) => {
    const at = days.firstDay + i - seen.firstNight;
    if (filled || at < 0 || at >= seen.count) return;
    const stored = seen.sustained.map((column) => column[at]);
    if (stored.includes(MISSING_HUNDREDTHS)) return;
    const levels = new Float64Array(SUSTAINED_COUNT);
    sustainedOnCurve(curve, levels);
    const features = new Float64Array(NIGHT_FEATURE_COUNT);
    nightFeatures(curve, tminTwoBefore, features);
    const { tmaxTwoBefore, tmaxBefore, tmin, tmaxAfter } = curve;
    const day = days.firstDay + i;
    const { year, month } = civilDate(day);
    nights.push({
      airport: airport.station.name,
      place: airport.place,
      day,
      winter: month >= 7 ? year + 1 : year,
      observed: Float64Array.from(stored, (value) => value / 100),
      curve: levels,
      features,
      minimumFeatures: fromMinima.get(i)!,
      tmaxBefore,
      tmaxAfter,
      kind: kindByTemperatures(tmaxTwoBefore, tmaxBefore, tmin, tmaxAfter),
      windKind: hasWind ? seen.kind[at] : -1,
      dayWindMs: [i > 0 ? days.windMs[i - 1] : NaN, days.windMs[i]],
    });
  });
  return nights;
}
