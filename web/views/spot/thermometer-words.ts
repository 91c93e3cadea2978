import { t } from '../../../analysis/language/t.ts';
import type { Calibration } from '../../../analysis/spot/thermometer/calibrate.ts';
import type { KindEstimate } from '../../../analysis/spot/thermometer/estimate-offset.ts';
import type { Mend } from '../../../analysis/spot/thermometer/mend.ts';
import type { ReadReadings, SettledOrder } from '../../../analysis/spot/thermometer/read-readings.ts';
import { NIGHTS_TO_STAND_ALONE } from '../../../analysis/spot/measured-offset.ts';
import { formatDay } from '../../format/dates.ts';
import { formatCount, plural } from '../../format/numbers.ts';
import { formatDifference } from '../../format/temperatures.ts';
import type { TemperatureUnit } from '../../format/unit.ts';

const BASIS = {
  chosen: t`as you chose`,
  stated: t`as the text says`,
  station: t`which fits the station`,
  guess: t`which is a guess`,
} as const;

/** What was read: `24 nights, 5 January 2024 to 20 March 2024`. */
export function readSentence(read: ReadReadings): string {
  const [first, last] = [read.readings[0]!, read.readings.at(-1)!];
  const nights = plural(read.readings.length, t`night`, t`nights`);
  const span = t`${nights}, ${formatDay(first.day)} to ${formatDay(last.day)}.`;
  return read.order ? `${span} ${orderSentence(read.order, read.orderGuessed)}` : span;
}

function orderSentence(order: SettledOrder, isGuess: boolean): string {
  if (order === 'day first')
    return isGuess ? t`Dates were read day first, which is a guess.` : t`Dates were read day first.`;
  return isGuess ? t`Dates were read month first, which is a guess.` : t`Dates were read month first.`;
}

export function unitSentence({ unit, unitBasis }: Calibration): string {
  return t`They were taken as °${unit}, ${BASIS[unitBasis]}.`;
}

/** `on calm nights this spot is 2.4 °F milder than the station: 1.1 to 3.6 °F …` */
export function offsetSentence(kind: 'calm' | 'windy', found: KindEstimate, unit: TemperatureUnit): string {
  const { lowC, centreC, highC } = found.spread;
  const plain = (valueC: number): string => formatDifference(valueC, unit).replace('+', '');
  const by = plain(Math.abs(centreC));
  const size =
    plain(centreC) === plain(0)
      ? t`as cold as the station`
      : centreC > 0
        ? t`${by} milder than the station`
        : t`${by} colder than the station`;
  const nights = plural(found.nights, t`night`, t`nights`);
  const told =
    kind === 'calm'
      ? t`On calm nights this spot is ${size} (${nights} compared).`
      : t`On windy nights this spot is ${size} (${nights} compared).`;
  return `${told} ${t`Its 90% range is ${formatDifference(lowC, unit)} to ${formatDifference(highC, unit)}.`}`;
}

/** How good it is and what would make it better. */
export function nightsSentence(found: KindEstimate): string {
  const worth = Math.max(1, Math.round(found.worthNights));
  const more = plural(found.nightsToHalve, t`more night`, t`more nights`);
  return [
    worth < found.nights
      ? t`Nights close together share their weather: these ${found.nights} tell as much as about ${worth} far apart, and the range allows for it.`
      : '',
    found.scatter === 'assumed'
      ? t`So few nights say nothing of their scatter: the range is what neighbouring stations differ by.`
      : '',
    t`About ${more} would halve the range; in other cold spells, and best in another winter, they count most.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** What using it means beside the table. */
export function weightSentence(kind: 'calm' | 'windy', found: KindEstimate): string {
  const fewest = NIGHTS_TO_STAND_ALONE;
  if (found.nights >= fewest)
    return kind === 'calm'
      ? t`From ${fewest} calm nights on the measured figure takes the place of the table’s.`
      : t`From ${fewest} windy nights on the measured figure takes the place of the table’s.`;
  return kind === 'calm'
    ? t`With under ${fewest} calm nights it is weighed with the table’s figure for the spot.`
    : t`With under ${fewest} windy nights it is weighed with the table’s figure for the spot.`;
}

/** Too few nights of a kind are known on both sides for an offset. */
export function fewSentence(kind: 'calm' | 'windy', nights: number): string {
  if (nights === 0)
    return kind === 'calm'
      ? t`No calm nights on both sides: no offset for calm nights, the table’s stays.`
      : t`No windy nights on both sides: no offset for windy nights, the table’s stays.`;
  return kind === 'calm'
    ? t`${plural(nights, t`calm night`, t`calm nights`)} on both sides: no offset for calm nights, the table’s stays.`
    : t`${plural(nights, t`windy night`, t`windy nights`)} on both sides: no offset for windy nights, the table’s stays.`;
}

/** Nights that count for neither kind. */
export function unclearSentence(nights: number): string {
  return nights === 1
    ? t`1 night counts for neither: the record doesn’t tell whether the air was calm. Clear, still, cold nights tell most.`
    : t`${formatCount(nights)} nights count for neither: the record doesn’t tell whether the air was calm. Clear, still, cold nights tell most.`;
}

/** How many readings found the same night at the station, and how many did not. */
export function pairedSentence(pairs: number, lone: number, unit: TemperatureUnit): string {
  const nights = plural(pairs, t`night`, t`nights`);
  return lone === 0
    ? t`${nights} known on both sides.`
    : t`${nights} known on both sides; ${lone} more had no partner: above ${unit === 'F' ? '50 °F' : '10 °C'} at the station, or not in its record.`;
}

/** An accepted mend in words, for taking it back. */
export function mendWords(mend: Mend): string {
  if (mend.kind === 'swap') return t`Day and month were exchanged.`;
  if (mend.kind === 'shift')
    return mend.days === 1
      ? t`All dates were moved one day later.`
      : t`All dates were moved one day earlier.`;
  if (mend.kind === 'unit') return t`The readings are taken as °${mend.unit}.`;
  const [first, ...others] = mend.lines;
  return others.length === 0
    ? t`Line ${first} is left out.`
    : t`${mend.lines.length} lines from line ${first} on are left out.`;
}
