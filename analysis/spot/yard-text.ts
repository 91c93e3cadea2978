import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { checkYard, OWN_MAX_C } from './check-yard.ts';
import { MECHANISM_IDS } from './mechanism.ts';
import { DigitReader, readName, writeDigits, writeName } from './text-digits.ts';
import {
  kindOfLetter,
  readLength,
  readPoint,
  readThing,
  writeLength,
  writePoint,
  writeThing,
} from './text-things.ts';
import type { Yard, YardSpot, YardThing, YardThingKind } from './yard.ts';

/** First letter of the text; another one marks another format. */
const VERSION = '1';
/** Longer than any yard within the limits. */
const LETTERS_MAX = 40_000;
const BEARING_STEPS = 10;
const PERCENT_STEPS = 10;
const DEGREE_STEPS = 100;
const POSITIONS = ['foot', 'middle', 'crest'] as const;
const WATERS = ['lake', 'sea'] as const;

function writeGain(gainC: number): string {
  return writeDigits((gainC + OWN_MAX_C) * DEGREE_STEPS, 2);
}

function readGain(reader: DigitReader): number {
  return (reader.count(2) - OWN_MAX_C * DEGREE_STEPS) / DEGREE_STEPS;
}

function writeOwn(own: Yard['own']): string {
  return MECHANISM_IDS.map((id, at) => {
    const set = own[id];
    return set === undefined ? '' : writeDigits(at, 1) + writeGain(set.calmC) + writeGain(set.windyC);
  }).join('');
}

function readOwn(reader: DigitReader): Yard['own'] {
  const own: Record<string, { calmC: number; windyC: number }> = {};
  while (reader.left() > 0) {
    const id = reader.choice(MECHANISM_IDS);
    const calmC = readGain(reader);
    own[id] = { calmC, windyC: readGain(reader) };
  }
  return own;
}

/**
 * A yard (checked before: `checkYard`) as a short text for an address: letters, figures, hyphen, underscore and dot
 * only. Lengths are rounded to 0.05 m, heights, too; densities to 0.01, bearings and falls to 0.1, the distance of
 * the big water to 1 m, degrees of one's own to 0.01 °C. Ids of things and spots are not kept.
 */
export function writeYardText(yard: Yard): string {
  const { slope, bigWater, own } = yard;
  const plot = writeLength(yard.widthM) + writeLength(yard.depthM);
  const parts = [
    VERSION + plot + writeDigits(yard.coldWindFromDeg * BEARING_STEPS, 2) + writeName(yard.name),
    ...yard.things.map(writeThing),
    ...yard.spots.map(({ name, at }) => `T${writePoint(at)}${writeName(name)}`),
  ];
  if (slope !== null) {
    const fall =
      writeDigits(slope.towardsDeg * BEARING_STEPS, 2) + writeDigits(slope.percent * PERCENT_STEPS, 2);
    parts.push(`S${fall}${writeDigits(POSITIONS.indexOf(slope.position), 1)}`);
  }
  if (bigWater !== null) {
    const where = writeDigits(bigWater.bearingDeg * BEARING_STEPS, 2) + writeDigits(bigWater.distanceM, 3);
    parts.push(`B${where}${writeDigits(WATERS.indexOf(bigWater.kind), 1)}`);
  }
  const degrees = writeOwn(own);
  if (degrees !== '') parts.push(`O${degrees}`);
  return parts.join('.');
}

function readSlope(reader: DigitReader): Yard['slope'] {
  const towardsDeg = reader.count(2) / BEARING_STEPS;
  return { towardsDeg, percent: reader.count(2) / PERCENT_STEPS, position: reader.choice(POSITIONS) };
}

function readBigWater(reader: DigitReader): Yard['bigWater'] {
  const bearingDeg = reader.count(2) / BEARING_STEPS;
  return { bearingDeg, distanceM: reader.count(3), kind: reader.choice(WATERS) };
}

/**
 * Reads what `writeYardText` wrote. Things are numbered by their kind (`wall-2`), spots among themselves (`spot-1`).
 * @throws {InputError} where the text is none of a yard, or of one that can't be reckoned with
 */
export function readYardText(text: string): Yard {
  if (!text.startsWith(VERSION)) throw new InputError(t`The yard's text does not begin with ${VERSION}.`);
  if (text.length > LETTERS_MAX) {
    throw new InputError(
      t`The yard's text has ${sayCount(text.length)} letters; at most ${sayCount(LETTERS_MAX)} are possible.`,
    );
  }
  const [head, ...parts] = text.slice(VERSION.length).split('.');
  const plot = new DigitReader(head, t`The beginning of the yard's text`);
  const widthM = readLength(plot);
  const depthM = readLength(plot);
  const coldWindFromDeg = plot.count(2) / BEARING_STEPS;
  const name = readName(plot.rest());

  const things: YardThing[] = [];
  const spots: YardSpot[] = [];
  let slope: Yard['slope'] = null;
  let bigWater: Yard['bigWater'] = null;
  let own: Yard['own'] = {};
  const numbers = new Map<YardThingKind, number>();
  for (const part of parts) {
    const kind = kindOfLetter(part[0]);
    if (kind !== undefined) {
      const number = (numbers.get(kind) ?? 0) + 1;
      numbers.set(kind, number);
      things.push(readThing(kind, `${kind}-${number}`, part.slice(1)));
      continue;
    }
    const reader = new DigitReader(part.slice(1), t`Part "${part.slice(0, 12)}" of the yard's text`);
    if (part[0] === 'T') {
      spots.push({ id: `spot-${spots.length + 1}`, at: readPoint(reader), name: readName(reader.rest()) });
    } else if (part[0] === 'S') slope = readSlope(reader);
    else if (part[0] === 'B') bigWater = readBigWater(reader);
    else if (part[0] === 'O') own = readOwn(reader);
    else throw new InputError(t`The yard's text has a part "${part.slice(0, 12)}" of an unknown kind.`);
    reader.end();
  }
  const yard: Yard = { name, widthM, depthM, things, spots, slope, bigWater, coldWindFromDeg, own };
  checkYard(yard);
  return yard;
}
