import { t } from '../../../analysis/language/t.ts';
import report from '../../../analysis/night/night-accuracy.json';
import { fahrenheitDifferenceToCelsius, fahrenheitToCelsius } from '../../../analysis/units/temperature.ts';
import { KIND_NAMES } from '../../format/night-kinds.ts';
import { formatChance, formatCount } from '../../format/numbers.ts';
import { differenceIn, figure, formatTemperature } from '../../format/temperatures.ts';
import { unitSymbol, type TemperatureUnit } from '../../format/unit.ts';

/** A table of measured errors, ready to show; the first column names the row. */
export interface AccuracyTable {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Errors by hours in °F as the calibration writes them: mean size, and mean (rebuilt less observed). */
export interface ErrorRow {
  readonly nights: number;
  readonly maeF: Readonly<Record<string, number>>;
  readonly biasF: Readonly<Record<string, number>>;
}

const HOURS_SHOWN = ['1', '4', '8', '12', '24'];

function shownDifference(differenceF: number | undefined, unit: TemperatureUnit): string {
  if (differenceF === undefined || !Number.isFinite(differenceF)) return '–';
  return figure(differenceIn(fahrenheitDifferenceToCelsius(differenceF), unit), 2);
}

/** Rows of errors as one table: `1.23 (−0.10)`, mean size and in brackets the mean. */
export function errorTable(
  title: string,
  rows: readonly (readonly [name: string, row: ErrorRow])[],
  unit: TemperatureUnit,
  counted = t`Nights`,
): AccuracyTable {
  return {
    title: `${title}, ${unitSymbol(unit)}`,
    columns: ['', counted, ...HOURS_SHOWN.map((hours) => `${hours} h`)],
    rows: rows.map(([name, { nights, maeF, biasF }]) => [
      name,
      formatCount(nights),
      ...HOURS_SHOWN.map(
        (hours) => `${shownDifference(maeF[hours], unit)} (${shownDifference(biasF[hours], unit)})`,
      ),
    ]),
  };
}

function kindName(kind: string): string {
  return KIND_NAMES[kind as keyof typeof KIND_NAMES] ?? kind;
}

/** How often a kind by the wind beside the lowest reading (rows) was told as which kind (columns). */
export function confusionTable(
  title: string,
  confusion: Readonly<Record<string, Readonly<Record<string, number>>>>,
): AccuracyTable {
  const kinds = Object.keys(confusion);
  return {
    title,
    columns: ['', ...kinds.map((kind) => t`told ${kindName(kind)}`)],
    rows: kinds.map((kind) => [
      t`${kindName(kind)} by the wind`,
      ...kinds.map((told) => formatCount(confusion[kind][told])),
    ]),
  };
}

function hitsTable(unit: TemperatureUnit): AccuracyTable {
  const { hitsAtFourHoursF: hits, hitsAtFourHoursUncorrectedF: plain } = report.winters.withFrost;
  const levels = ['28', '26', '24'] as const;
  return {
    title: t`Nights a winter held for four hours at or below a level, in winters with frost`,
    columns: ['', t`observed`, t`rebuilt`, t`off by`, t`uncorrected, off by`],
    rows: levels.map((level) => [
      formatTemperature(fahrenheitToCelsius(Number(level)), unit),
      figure(hits[level].observedPerWinter, 1),
      figure(hits[level].estimatedPerWinter, 1),
      share(hits[level].excess),
      share(plain[level].excess),
    ]),
  };
}

function share(excess: number): string {
  return `${excess < 0 ? '−' : '+'}${formatChance(Math.abs(excess))}`;
}

/** What the calibration measured, the most telling first. */
export function mainTables(unit: TemperatureUnit): readonly AccuracyTable[] {
  const { winters, kinds } = report;
  return [
    errorTable(
      t`All nights with frost`,
      [
        [t`as used here`, report.frostNights],
        [t`plain curve, uncorrected`, report.frostNightsUncorrected],
        [t`from the lows alone`, report.frostNightsMinimaOnly],
      ],
      unit,
    ),
    errorTable(
      t`Coldest of each winter that was seen whole: what decides the answers`,
      [
        [t`coldest night`, winters.wholeWithFrost.coldestNight],
        [t`coldest night, uncorrected`, winters.wholeWithFrost.coldestNightUncorrected],
        [t`coldest night, from the lows alone`, winters.wholeWithFrost.coldestNightMinimaOnly],
        [t`coldest level`, winters.wholeWithFrost.winterMinimum],
        [t`coldest level, uncorrected`, winters.wholeWithFrost.winterMinimumUncorrected],
        [t`coldest level, from the lows alone`, winters.wholeWithFrost.winterMinimumMinimaOnly],
      ],
      unit,
      t`Winters`,
    ),
    hitsTable(unit),
    confusionTable(t`Calm or windy as told by temperatures alone, in nights`, kinds.byTemperatures),
    confusionTable(t`Calm or windy as told by the mean wind of the days, in nights`, kinds.byDailyWind),
  ];
}

/** The same errors apart, for those who look closer. */
export function furtherTables(unit: TemperatureUnit): readonly AccuracyTable[] {
  return [
    errorTable(
      t`Nights with frost by kind`,
      Object.entries(report.byKind).map(([kind, row]) => [kindName(kind), row] as const),
      unit,
    ),
    errorTable(t`Nights with frost by airport`, Object.entries(report.byAirport), unit),
  ];
}
