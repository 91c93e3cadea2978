import { sayFigure } from '../../language/figures.ts';
import { t } from '../../language/t.ts';
import { quantileType7 } from '../../math/quantile.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../../units/temperature.ts';
import { centreAndSpread, matchOf, type Fault } from './fault.ts';
import type { PairedNight } from './paired-night.ts';
import { sayDay, sayDifference, sayTemperature } from './say.ts';
import type { NightReading, ReadingUnit } from './spot-reading.ts';
import { theilSen } from './theil-sen.ts';

/** No yard differs so much from its station on most nights, °C. */
const FAR_C = 8;
/** Readings that move so little with the station, with a spot so much milder, hang indoors. */
const INDOORS_SLOPE = 0.45;
const INDOORS_MILDER_C = 3;
/** A shaded thermometer's day seldom rises so far above its night, °C; no shade is so warm. */
const SUNNY_RANGE_C = 22;
const SUNNY_MAXIMUM_C = 45;
/** As many equal readings in a row are a stuck instrument when the station moved by more than this, °C. */
const STUCK_NIGHTS = 4;
const STUCK_STATION_C = 3;
/** A reading this far from the others' difference, in spreads and °C, is a slip. */
const OUTLIER_SPREADS = 5;
const OUTLIER_C = 6;
const NIGHTS_NEEDED = 5;

/** Wrong unit, sun, rooms, stuck and wild values. `readUnit`: the unit the values were taken in. */
export function instrumentFaults(
  readings: readonly NightReading[],
  pairs: readonly PairedNight[],
  nights: KeptNights,
  readUnit: ReadingUnit,
  unit: ReadingUnit,
): Fault[] {
  const wrongUnit = unitFault(readings, pairs, nights, readUnit, unit);
  if (wrongUnit) return [wrongUnit];
  return [
    sunFault(readings, unit),
    milderFault(pairs, unit),
    stuckFault(pairs, unit),
    outlierFault(pairs, unit),
  ].filter((fault) => fault !== null);
}

function unitFault(
  readings: readonly NightReading[],
  pairs: readonly PairedNight[],
  nights: KeptNights,
  readUnit: ReadingUnit,
  unit: ReadingUnit,
): Fault | null {
  if (pairs.length < NIGHTS_NEEDED) return null;
  const other: ReadingUnit = readUnit === 'F' ? 'C' : 'F';
  const toOther = readUnit === 'F' ? celsiusToFahrenheit : fahrenheitToCelsius;
  const retaken = readings.map((r) => ({ ...r, minimumC: toOther(r.minimumC) }));
  const [now, then] = [matchOf(readings, nights), matchOf(retaken, nights)];
  const isFar = Math.abs(now.centreC) > FAR_C / 2 && Math.abs(then.centreC) < Math.abs(now.centreC) / 2;
  if (!isFar || then.spreadC > Math.max(now.spreadC, 2)) return null;
  return {
    id: 'unit',
    sentence: t`The readings were taken as °${readUnit}, and differ from the station by ${sayDifference(now.centreC, unit)} on a middling night; as °${other} by ${sayDifference(then.centreC, unit)}.`,
    mend: { label: t`Take them as °${other}`, mend: { kind: 'unit', unit: other } },
  };
}

function sunFault(readings: readonly NightReading[], unit: ReadingUnit): Fault | null {
  const days = readings.filter(({ maximumC }) => maximumC !== null);
  if (days.length < NIGHTS_NEEDED) return null;
  const hottest = days.reduce((a, b) => (b.maximumC! > a.maximumC! ? b : a));
  const range = quantileType7(
    days.map(({ minimumC, maximumC }) => maximumC! - minimumC),
    0.5,
  );
  if (range < SUNNY_RANGE_C && hottest.maximumC! < SUNNY_MAXIMUM_C) return null;
  return {
    id: 'sun',
    sentence: t`The thermometer seems to hang in the sun: up to ${sayTemperature(hottest.maximumC!, unit)} (${sayDay(hottest.day)}), and ${sayDifference(range, unit)} from night to day on a middling day. By dawn that is gone, so the minima stay; a shade of its own would make sure.`,
    mend: null,
  };
}

function milderFault(pairs: readonly PairedNight[], unit: ReadingUnit): Fault | null {
  if (pairs.length < NIGHTS_NEEDED) return null;
  const { centreC } = centreAndSpread(pairs.map(({ differenceC }) => differenceC));
  const follows = theilSen(
    pairs.map(({ stationC }) => stationC),
    pairs.map(({ readingC }) => readingC),
  );
  if (follows && follows.high < INDOORS_SLOPE && centreC > INDOORS_MILDER_C) {
    return {
      id: 'indoors',
      sentence: t`The readings move only ${sayFigure(follows.slope, 1)} degrees for each degree at the station and lie ${sayDifference(centreC, unit)} above it: that is a room, a shed or a warm wall, not the air where a tree would stand.`,
      mend: null,
    };
  }
  if (Math.abs(centreC) < FAR_C) return null;
  const away = sayDifference(centreC, unit);
  return {
    id: 'far',
    sentence:
      centreC > 0
        ? t`The readings lie ${away} above the station on a middling night, more than any yard should: is it the right station, and does the thermometer read 32 °F (0 °C) in ice and water?`
        : t`The readings lie ${away} below the station on a middling night, more than any yard should: is it the right station, and does the thermometer read 32 °F (0 °C) in ice and water?`,
    mend: null,
  };
}

function stuckFault(pairs: readonly PairedNight[], unit: ReadingUnit): Fault | null {
  for (let from = 0, to; from < pairs.length; from = to) {
    to = from + 1;
    while (to < pairs.length && Math.abs(pairs[to]!.readingC - pairs[from]!.readingC) < 1e-6) to++;
    const run = pairs.slice(from, to);
    const levels = run.map(({ stationC }) => stationC);
    const moved = Math.max(...levels) - Math.min(...levels);
    if (run.length < STUCK_NIGHTS || moved < STUCK_STATION_C) continue;
    return {
      id: 'stuck',
      sentence: t`${run.length} nights in a row read ${sayTemperature(run[0]!.readingC, unit)} (lines ${run[0]!.line} to ${run.at(-1)!.line}) while the station moved by ${sayDifference(moved, unit)}: the thermometer or its reset was stuck.`,
      mend: { label: t`Leave them out`, mend: { kind: 'leave-out', lines: run.map(({ line }) => line) } },
    };
  }
  return null;
}

function outlierFault(pairs: readonly PairedNight[], unit: ReadingUnit): Fault | null {
  if (pairs.length < NIGHTS_NEEDED + 1) return null;
  const { centreC, spreadC } = centreAndSpread(pairs.map(({ differenceC }) => differenceC));
  const limit = Math.max(OUTLIER_C, OUTLIER_SPREADS * spreadC);
  const wild = pairs.filter(({ differenceC }) => Math.abs(differenceC - centreC) > limit);
  const first = wild[0];
  if (!first || wild.length > pairs.length / 4) return null;
  const read = `${sayDay(first.day)}, ${sayTemperature(first.readingC, unit)}`;
  const away = sayDifference(first.differenceC - centreC, unit);
  const others = wild.length > 1 ? t`, and ${wild.length - 1} more like it` : '';
  return {
    id: 'outlier',
    sentence:
      first.differenceC > centreC
        ? t`Line ${first.line} (${read}) lies ${away} above what the other nights lead one to expect${others}: a weak battery or a slip of the pen. It hardly moves the centre of the result, but can stretch its range.`
        : t`Line ${first.line} (${read}) lies ${away} below what the other nights lead one to expect${others}: a weak battery or a slip of the pen. It hardly moves the centre of the result, but can stretch its range.`,
    mend: { label: t`Leave out`, mend: { kind: 'leave-out', lines: wild.map(({ line }) => line) } },
  };
}
