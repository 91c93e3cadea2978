import { sayCount } from '../language/figures.ts';
import { t } from '../language/t.ts';
import { InputError } from '../records/input-error.ts';
import { checkYard, SPOTS_MAX } from './check-yard.ts';
import {
  booleanField,
  choiceField,
  jsonObject,
  listField,
  numberField,
  pointField,
  pointsField,
  textField,
  type JsonObject,
} from './json-fields.ts';
import { inQuotes } from './limits.ts';
import { MECHANISM_IDS } from './mechanism.ts';
import { thingName } from './thing-problems.ts';
import {
  CORNERS_MAX,
  GROUND_COVERS,
  THINGS_MAX,
  type Yard,
  type YardSpot,
  type YardThing,
  type YardThingKind,
} from './yard.ts';

/** Version of the file's format; raised when a reader of the former couldn't read it. */
const YARD_SCHEMA = 1;

/** Most bytes of a yard file: five times what the most things with the most corners take. */
export const YARD_BYTES_MAX = 1_000_000;

/** Fields of each kind of thing besides `kind` and `id`. */
const FIELDS: Record<YardThingKind, readonly string[]> = {
  building: ['outline', 'heightM', 'heated', 'masonry'],
  wall: ['line', 'heightM', 'masonry', 'open'],
  canopy: ['outline', 'baseM', 'heightM', 'density'],
  paving: ['outline'],
  water: ['outline'],
  ground: ['outline', 'cover'],
  windbreak: ['line', 'heightM'],
  hollow: ['at', 'byM', 'radiusM'],
  rise: ['at', 'byM', 'radiusM'],
};
const KINDS = Object.keys(FIELDS) as YardThingKind[];
const ALL_FIELDS = ['kind', 'id', ...new Set(Object.values(FIELDS).flat())];
const YARD_FIELDS = [
  ...['schema', 'name', 'widthM', 'depthM', 'things', 'spots'],
  ...['slope', 'bigWater', 'coldWindFromDeg', 'own'],
];

function readThing(value: unknown, at: number): YardThing {
  const loose = jsonObject(value, t`Thing ${at + 1}`, ALL_FIELDS);
  const kind = choiceField(loose, 'kind', KINDS);
  const id = textField(loose, 'id');
  const object = jsonObject(value, thingName({ kind, id }), ['kind', 'id', ...FIELDS[kind]]);
  const outline = () => pointsField(object, 'outline', CORNERS_MAX);
  const line = () => pointsField(object, 'line', CORNERS_MAX);
  const number = (name: string) => numberField(object, name);
  switch (kind) {
    case 'building': {
      const [heated, masonry] = [booleanField(object, 'heated'), booleanField(object, 'masonry')];
      return { kind, id, outline: outline(), heightM: number('heightM'), heated, masonry };
    }
    case 'wall': {
      const [masonry, open] = [booleanField(object, 'masonry'), booleanField(object, 'open')];
      return { kind, id, line: line(), heightM: number('heightM'), masonry, open };
    }
    case 'canopy': {
      const measures = { baseM: number('baseM'), heightM: number('heightM'), density: number('density') };
      return { kind, id, outline: outline(), ...measures };
    }
    case 'paving':
    case 'water':
      return { kind, id, outline: outline() };
    case 'ground':
      return { kind, id, outline: outline(), cover: choiceField(object, 'cover', GROUND_COVERS) };
    case 'windbreak':
      return { kind, id, line: line(), heightM: number('heightM') };
    case 'hollow':
    case 'rise':
      return { kind, id, at: pointField(object, 'at'), byM: number('byM'), radiusM: number('radiusM') };
  }
}

function readSpot(value: unknown, at: number): YardSpot {
  const object = jsonObject(value, t`Spot ${at + 1}`, ['id', 'name', 'at']);
  return { id: textField(object, 'id'), name: textField(object, 'name'), at: pointField(object, 'at') };
}

function readSlope(value: unknown): Yard['slope'] {
  if (value === null || value === undefined) return null;
  const object = jsonObject(value, t`The slope`, ['towardsDeg', 'percent', 'position']);
  return {
    towardsDeg: numberField(object, 'towardsDeg'),
    percent: numberField(object, 'percent'),
    position: choiceField(object, 'position', ['foot', 'middle', 'crest']),
  };
}

function readBigWater(value: unknown): Yard['bigWater'] {
  if (value === null || value === undefined) return null;
  const object = jsonObject(value, t`The big water`, ['bearingDeg', 'distanceM', 'kind']);
  return {
    bearingDeg: numberField(object, 'bearingDeg'),
    distanceM: numberField(object, 'distanceM'),
    kind: choiceField(object, 'kind', ['lake', 'sea']),
  };
}

function readOwn(value: unknown): Yard['own'] {
  if (value === undefined) return {};
  const { fields } = jsonObject(value, t`The degrees of your own`, MECHANISM_IDS);
  const set = MECHANISM_IDS.filter((id) => Object.hasOwn(fields, id)).map((id) => {
    const object = jsonObject(fields[id], t`Your own ${inQuotes(id)}`, ['calmC', 'windyC']);
    return [id, { calmC: numberField(object, 'calmC'), windyC: numberField(object, 'windyC') }] as const;
  });
  return Object.fromEntries(set);
}

/**
 * A yard of a value out of JSON: every field is there and of its kind, whether or not it can be reckoned with (`checkYard`).
 * @throws {InputError} naming thing and field
 */
export function yardOfJson(value: unknown): Yard {
  return readYard(jsonObject(value, t`The yard`, YARD_FIELDS));
}

function readYard(object: JsonObject): Yard {
  const { fields } = object;
  return {
    name: textField(object, 'name'),
    widthM: numberField(object, 'widthM'),
    depthM: numberField(object, 'depthM'),
    things: listField(object, 'things', THINGS_MAX).map(readThing),
    spots: fields.spots === undefined ? [] : listField(object, 'spots', SPOTS_MAX).map(readSpot),
    slope: readSlope(fields.slope),
    bigWater: readBigWater(fields.bigWater),
    coldWindFromDeg: numberField(object, 'coldWindFromDeg'),
    own: readOwn(fields.own),
  };
}

function readAnything(text: string): Yard {
  if (text.length > YARD_BYTES_MAX) {
    throw new InputError(
      t`it has ${sayCount(text.length)} letters; a yard has at most ${sayCount(YARD_BYTES_MAX)}.`,
    );
  }
  let value: unknown;
  try {
    // Editors of some systems put a byte order mark before the text.
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    throw new InputError(t`this is not a yard: the text is not JSON.`);
  }
  const schema = typeof value === 'object' && value !== null && 'schema' in value ? value.schema : undefined;
  if (schema !== YARD_SCHEMA) {
    throw new InputError(
      typeof schema === 'number'
        ? t`this yard file has schema ${schema}; schema ${YARD_SCHEMA} is what can be read.`
        : t`this yard file has no schema number; schema ${YARD_SCHEMA} is what can be read.`,
    );
  }
  const yard = yardOfJson(value);
  checkYard(yard);
  return yard;
}

/**
 * Reads a yard file: JSON with `schema` 1 and the fields of `Yard`; `spots`, `slope`, `bigWater` and `own` may be left out.
 * @param fileName what the file is called in error sentences
 * @throws {InputError} naming file, thing, value and limit
 */
export function readYardFile(text: string, fileName: string): Yard {
  try {
    return readAnything(text);
  } catch (error) {
    if (error instanceof InputError) throw new InputError(t`${fileName}: ${error.message}`);
    throw error;
  }
}

/** A yard as a file's text: what `readYardFile` reads. */
export function yardFileText(yard: Yard): string {
  return `${JSON.stringify({ schema: YARD_SCHEMA, ...yard }, null, 2)}\n`;
}
