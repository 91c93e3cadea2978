import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { DigitReader, writeDigits } from './text-digits.ts';
import { CORNERS_MAX, GROUND_COVERS, type PlanPoint, type YardThing, type YardThingKind } from './yard.ts';

/** Steps that lengths and heights are rounded to in the text, m: two letters then reach 204 m. */
const STEP_M = 0.05;
const DENSITY_STEPS = 100;

/** First letter of each thing's part of the text. */
const LETTERS: Record<YardThingKind, string> = {
  building: 'b',
  wall: 'w',
  canopy: 'c',
  paving: 'p',
  water: 'l',
  ground: 'g',
  windbreak: 'k',
  hollow: 'd',
  rise: 'r',
};
const KINDS = new Map(Object.entries(LETTERS).map(([kind, letter]) => [letter, kind as YardThingKind]));

/** A length as two letters. */
export function writeLength(lengthM: number): string {
  return writeDigits(lengthM / STEP_M, 2);
}

export function readLength(reader: DigitReader): number {
  // Divided, not multiplied: 0.05 has no exact value, 1/20 of a whole number is the nearest one can say.
  return reader.count(2) / (1 / STEP_M);
}

export function writePoint([eastM, northM]: PlanPoint): string {
  return writeLength(eastM) + writeLength(northM);
}

export function readPoint(reader: DigitReader): PlanPoint {
  const eastM = readLength(reader);
  return [eastM, readLength(reader)];
}

function writeFlags(...flags: boolean[]): string {
  return writeDigits(
    flags.reduce((sum, flag, at) => sum + (flag ? 1 << at : 0), 0),
    1,
  );
}

/** Underside and top of a crown keep a step between them. */
function writeCrown(baseM: number, heightM: number): string {
  const top = Math.round(heightM / STEP_M);
  return writeDigits(Math.max(0, Math.min(Math.round(baseM / STEP_M), top - 1)), 2) + writeDigits(top, 2);
}

/** A thing without its id: kind, measures, corners. */
export function writeThing(thing: YardThing): string {
  const letter = LETTERS[thing.kind];
  const corners = ('outline' in thing ? thing.outline : 'line' in thing ? thing.line : [thing.at])
    .map(writePoint)
    .join('');
  switch (thing.kind) {
    case 'building':
      return letter + writeFlags(thing.heated, thing.masonry) + writeLength(thing.heightM) + corners;
    case 'wall':
      return letter + writeFlags(thing.masonry, thing.open) + writeLength(thing.heightM) + corners;
    case 'canopy': {
      const density = writeDigits(thing.density * DENSITY_STEPS, 2);
      return letter + writeCrown(thing.baseM, thing.heightM) + density + corners;
    }
    case 'paving':
    case 'water':
      return letter + corners;
    case 'ground':
      return letter + writeDigits(GROUND_COVERS.indexOf(thing.cover), 1) + corners;
    case 'windbreak':
      return letter + writeLength(thing.heightM) + corners;
    case 'hollow':
    case 'rise':
      return letter + writeLength(thing.byM) + writeLength(thing.radiusM) + corners;
  }
}

/** The kind of thing that a part's first letter stands for; `undefined`: none. */
export function kindOfLetter(letter: string): YardThingKind | undefined {
  return KINDS.get(letter);
}

/**
 * A thing from what follows its letter.
 * @throws {InputError} where the text is none that `writeThing` writes
 */
export function readThing(kind: YardThingKind, id: string, text: string): YardThing {
  const reader = new DigitReader(text, t`The ${kind} of the yard's text`);
  const flags = () => {
    const bits = reader.count(1);
    return [(bits & 1) !== 0, (bits & 2) !== 0] as const;
  };
  const corners = () => {
    const points: PlanPoint[] = [];
    while (reader.left() > 0) points.push(readPoint(reader));
    if (points.length <= CORNERS_MAX) return points;
    throw new InputError(
      t`The ${kind} of the yard's text has ${points.length} corners; at most ${CORNERS_MAX} are possible.`,
    );
  };
  switch (kind) {
    case 'building': {
      const [heated, masonry] = flags();
      return { kind, id, heated, masonry, heightM: readLength(reader), outline: corners() };
    }
    case 'wall': {
      const [masonry, open] = flags();
      return { kind, id, masonry, open, heightM: readLength(reader), line: corners() };
    }
    case 'canopy': {
      const baseM = readLength(reader);
      const heightM = readLength(reader);
      return { kind, id, baseM, heightM, density: reader.count(2) / DENSITY_STEPS, outline: corners() };
    }
    case 'paving':
    case 'water':
      return { kind, id, outline: corners() };
    case 'ground':
      return { kind, id, cover: reader.choice(GROUND_COVERS), outline: corners() };
    case 'windbreak':
      return { kind, id, heightM: readLength(reader), line: corners() };
    case 'hollow':
    case 'rise': {
      const measures = { byM: readLength(reader), radiusM: readLength(reader) };
      const at = readPoint(reader);
      reader.end();
      return { kind, id, ...measures, at };
    }
  }
}
