import { MINIMUM_FEATURES } from '../../analysis/night/minimum-features.ts';
import { NIGHT_FEATURES } from '../../analysis/night/night-features.ts';
import { SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import {
  bookedFrostNights,
  coldestNights,
  errorRow,
  errorsByAirport,
  errorsByKind,
  frostNights,
  hitsAtFourHours,
  rounded,
  spreadOverMinimum,
  winterMinimumErrors,
  wintersOf,
  type ErrorRow,
  type Estimate,
} from './error-tables.ts';
import { FIT_UP_TO_C, fitCorrection, fitMinimaOnly } from './fit-correction.ts';
import { kindConfusion } from './kind-check.ts';
import { judgeLeftOut, type JudgedNight } from './left-out.ts';
import { sampleNights, type SampleNight } from './night-sample.ts';
import type { AirportRecord } from './read-airports.ts';

const SCRIPT = 'data-scripts/calibrate/main.ts';
const CORRECTED: Estimate = (night) => night.estimated;
const UNCORRECTED: Estimate = (night) => night.curve;
const MINIMA_ONLY: Estimate = (night) => night.fromMinima;

/** Sampled nights of all airports, in the airports' order. */
export function sampleAll(records: readonly AirportRecord[]): SampleNight[] {
  return records.flatMap((record) => sampleNights(record));
}

/** All error tables, each place judged by constants fitted without it. °F. */
export function measureAccuracy(nights: readonly SampleNight[]) {
  const judged = judgeLeftOut(nights);
  const frost = frostNights(judged);
  return {
    about:
      'Errors of sustained cold rebuilt from daily extremes against the same nights by hourly readings, in °F; ' +
      'every place is judged by constants fitted without it. Frost nights: observed minimum at or below 0 °C.',
    hours: SUSTAINED_HOURS,
    frostNights: errorRow(frost, CORRECTED),
    frostNightsUncorrected: errorRow(frost, UNCORRECTED),
    frostNightsMinimaOnly: errorRow(frost, MINIMA_ONLY),
    bookedFrostNights: errorRow(bookedFrostNights(judged), CORRECTED),
    byKind: errorsByKind(frost, CORRECTED),
    byAirport: errorsByAirport(frost, CORRECTED),
    winters: winterTables(judged),
    kinds: kindConfusion(nights),
  };
}

export type NightAccuracy = ReturnType<typeof measureAccuracy>;

function winterTables(judged: readonly JudgedNight[]) {
  const tables = (whole: boolean) => {
    const winters = wintersOf(judged, whole);
    const coldest = coldestNights(winters);
    return {
      winters: winters.length,
      coldestNight: errorRow(coldest, CORRECTED),
      coldestNightUncorrected: errorRow(coldest, UNCORRECTED),
      coldestNightMinimaOnly: errorRow(coldest, MINIMA_ONLY),
      coldestNightSpreadOverMinimumF: spreadOverMinimum(coldest),
      winterMinimum: winterMinimumErrors(winters, CORRECTED),
      winterMinimumUncorrected: winterMinimumErrors(winters, UNCORRECTED),
      winterMinimumMinimaOnly: winterMinimumErrors(winters, MINIMA_ONLY),
      hitsAtFourHoursF: hitsAtFourHours(winters, CORRECTED),
      hitsAtFourHoursUncorrectedF: hitsAtFourHours(winters, UNCORRECTED),
      hitsAtFourHoursMinimaOnlyF: hitsAtFourHours(winters, MINIMA_ONLY),
    };
  };
  return { withFrost: tables(false), wholeWithFrost: tables(true) };
}

/** The constants that ship, fitted on all airports, with where they come from. */
export function correctionFile(
  nights: readonly SampleNight[],
  records: readonly AirportRecord[],
  accuracy: NightAccuracy,
) {
  return {
    provenance: {
      script: SCRIPT,
      method:
        'least absolute deviations of S_h - S_0 on the features of a night, duration by duration, small ridge',
      airports: records.map(({ airport, series }) => ({
        name: airport.station.name,
        file: airport.file,
        readings: series.timeUtcH.length,
        nights: nights.filter(({ airport: name }) => name === airport.station.name).length,
      })),
      leftOutFrostNightsF: shownErrors(accuracy.frostNights),
      shareOfNightsFitted: rounded(
        nights.filter(({ curve }) => curve[0] <= FIT_UP_TO_C).length / nights.length,
      ),
    },
    hours: SUSTAINED_HOURS,
    features: NIGHT_FEATURES,
    constants: fiveDigits(fitCorrection(nights)),
  };
}

/** The constants for stations without maxima; airports and nights are those of the other file. */
export function minimaOnlyFile(nights: readonly SampleNight[], accuracy: NightAccuracy) {
  return {
    provenance: {
      script: SCRIPT,
      method:
        'least absolute deviations of S_h - S_0 on what the minima show of a night, duration by duration, small ridge; ' +
        'airports and nights as in sustained-correction.json, their maxima hidden',
      leftOutFrostNightsF: shownErrors(accuracy.frostNightsMinimaOnly),
    },
    hours: SUSTAINED_HOURS,
    features: MINIMUM_FEATURES,
    constants: fiveDigits(fitMinimaOnly(nights)),
  };
}

function shownErrors({ nights, maeF, biasF }: ErrorRow) {
  return { nights, mae: maeF, bias: biasF };
}

function fiveDigits(constants: readonly (readonly number[])[]): number[][] {
  return constants.map((row) => row.map((value) => Number(value.toPrecision(5))));
}
