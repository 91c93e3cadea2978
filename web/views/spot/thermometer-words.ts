import type { Calibration } from '../../../analysis/spot/thermometer/calibrate.ts';
import type { KindEstimate } from '../../../analysis/spot/thermometer/estimate-offset.ts';
import type { Mend } from '../../../analysis/spot/thermometer/mend.ts';
import type { ReadReadings } from '../../../analysis/spot/thermometer/read-readings.ts';
import { NIGHTS_TO_STAND_ALONE } from '../../../analysis/spot/measured-offset.ts';
import { formatDay } from '../../format/dates.ts';
import { plural } from '../../format/numbers.ts';
import { formatDifference } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

const BASIS = {
  chosen: 'as you chose',
  stated: 'as the text says',
  station: 'which fits the station',
  guess: 'which is a guess',
} as const;

/** What was read: `24 nights, 5 January 2024 to 20 March 2024`. */
export function readSentence(read: ReadReadings): string {
  const [first, last] = [read.readings[0]!, read.readings.at(-1)!];
  const order = read.order
    ? ` Dates were read ${read.order}${read.orderGuessed ? ', which is a guess' : ''}.`
    : '';
  return `${plural(read.readings.length, 'night')}, ${formatDay(first.day)} to ${formatDay(last.day)}.${order}`;
}

export function unitSentence({ unit, unitBasis }: Calibration): string {
  return `They were taken as °${unit}, ${BASIS[unitBasis]}.`;
}

/** `on calm nights this spot is 2.4 °F milder than the station: 1.1 to 3.6 °F …` */
export function offsetSentence(kind: 'calm' | 'windy', found: KindEstimate, unit: TemperatureUnit): string {
  const { lowC, centreC, highC } = found.spread;
  const plain = (valueC: number): string => formatDifference(valueC, unit).replace('+', '');
  const size =
    plain(centreC) === plain(0)
      ? 'as cold as the station'
      : `${plain(Math.abs(centreC))} ${centreC > 0 ? 'milder' : 'colder'} than the station`;
  return (
    `On ${kind} nights this spot is ${size} (${plural(found.nights, 'night')} compared). ` +
    `Its 90% range is ${formatDifference(lowC, unit)} to ${formatDifference(highC, unit)}.`
  );
}

/** How good it is and what would make it better. */
export function nightsSentence(found: KindEstimate): string {
  const worth = Math.max(1, Math.round(found.worthNights));
  const alike =
    worth < found.nights
      ? `Nights close together share their weather: these ${found.nights} tell as much as about ${worth} far apart, and the range allows for it. `
      : '';
  const own =
    found.scatter === 'assumed'
      ? 'So few nights say nothing of their scatter: the range is what neighbouring stations differ by. '
      : '';
  return `${alike}${own}About ${plural(found.nightsToHalve, 'more night')} would halve the range; in other cold spells, and best in another winter, they count most.`;
}

/** What using it means beside the table. */
export function weightSentence(kind: 'calm' | 'windy', found: KindEstimate): string {
  return found.nights >= NIGHTS_TO_STAND_ALONE
    ? `From ${NIGHTS_TO_STAND_ALONE} ${kind} nights on the measured figure takes the place of the table’s.`
    : `With under ${NIGHTS_TO_STAND_ALONE} ${kind} nights it is weighed with the table’s figure for the spot.`;
}

/** An accepted mend in words, for taking it back. */
export function mendWords(mend: Mend): string {
  if (mend.kind === 'swap') return 'Day and month were exchanged.';
  if (mend.kind === 'shift') return `All dates were moved one day ${mend.days === 1 ? 'later' : 'earlier'}.`;
  if (mend.kind === 'unit') return `The readings are taken as °${mend.unit}.`;
  const [first, ...others] = mend.lines;
  return others.length === 0
    ? `Line ${first} is left out.`
    : `${mend.lines.length} lines from line ${first} on are left out.`;
}
