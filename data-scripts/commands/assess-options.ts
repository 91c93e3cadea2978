import { parseArgs } from 'node:util';
import { InputError } from '../../analysis/records/input-error.ts';
import { CONDITIONS_OF_COVER, MEASURE_IDS } from '../../analysis/cover/cover-ids.ts';
import { NAMED_SPOTS } from '../../analysis/spot/named-spots.ts';
import { CITRUS_TYPES, findType, type CitrusType } from '../../analysis/tree/catalogue.ts';
import { LEVELS, type Level } from '../../analysis/tree/levels.ts';
import { CONDITIONS, MATURE_TREE, ROOTSTOCKS, type TreeState } from '../../analysis/tree/penalties.ts';
import { UsageError } from './run-command.ts';

export const ASSESS_HELP = `npm run assess -- --pack PACK (--station ID | --at LAT,LON[,ELEV_M] | --postcode CODE) [options]

About how often a winter on record would have taken a citrus tree's fruit, leaves, wood or life.

Place
  --pack PACK            folder of a record pack
  --station ID           a station of the pack
  --at LAT,LON[,ELEV_M]  a point: answered from the nearest station with a long record, and said so
  --postcode CODE        a postcode of the pack: likewise

Tree
  --types a,b            ids of types (default: all)
  --level L              ${LEVELS.join(', ')} (default: all four)
  --age N                years since planting (default: mature)
  --condition C          ${CONDITIONS.join(', ')} (default: ${MATURE_TREE.condition}, the tree the thresholds are for)
  --fruit-load           carries an unpicked crop
  --container            stands in a pot
  --not-hardened         warm weather or growth before the cold
  --rootstock R          ${ROOTSTOCKS.join(', ')} (default: ${MATURE_TREE.rootstock})

Spot and cover
  --spot NAME            ${NAMED_SPOTS.map(({ id }) => id).join(', ')};
                         or, with --yard, the name of a spot marked in it
  --yard FILE            a yard saved from the page
  --measured TEXT        what an own thermometer measured at the spot, as in the page's address
  --cover a,b            ${MEASURE_IDS.join(', ')};
                         conditions: ${CONDITIONS_OF_COVER.map(({ id }) => id).join(', ')}

Answer
  --years N              chance of at least one hit within N years (default: 10)
  --json | --csv         one JSON object, or a table with one row a type and level
`;

export interface AssessRequest {
  readonly pack: string;
  readonly place:
    | { readonly by: 'station'; readonly id: string }
    | { readonly by: 'point'; readonly lat: number; readonly lon: number; readonly elevationM: number | null }
    | { readonly by: 'postcode'; readonly code: string };
  readonly types: readonly CitrusType[];
  readonly levels: readonly Level[];
  readonly tree: TreeState;
  readonly spot: string | null;
  /** File of the yard. */
  readonly yard: string | null;
  readonly measured: string | null;
  readonly cover: string | null;
  readonly years: number;
  readonly format: 'text' | 'json' | 'csv';
}

/**
 * Reads the command line; `null` when help is asked for.
 * @throws UsageError on wrong use, InputError on a value that means nothing
 */
export function readAssessOptions(args: readonly string[]): AssessRequest | null {
  const { values } = parseArgs({
    args: [...args],
    options: {
      help: { type: 'boolean' },
      pack: { type: 'string' },
      station: { type: 'string' },
      at: { type: 'string' },
      postcode: { type: 'string' },
      types: { type: 'string' },
      level: { type: 'string' },
      age: { type: 'string' },
      condition: { type: 'string' },
      'fruit-load': { type: 'boolean' },
      container: { type: 'boolean' },
      'not-hardened': { type: 'boolean' },
      rootstock: { type: 'string' },
      spot: { type: 'string' },
      yard: { type: 'string' },
      measured: { type: 'string' },
      cover: { type: 'string' },
      years: { type: 'string' },
      json: { type: 'boolean' },
      csv: { type: 'boolean' },
    },
  });
  if (values.help) return null;
  if (!values.pack) throw new UsageError('--pack is missing');
  if ([values.station, values.at, values.postcode].filter((value) => value !== undefined).length !== 1) {
    throw new UsageError('exactly one of --station, --at and --postcode is needed');
  }
  if (values.json && values.csv) throw new UsageError('--json and --csv exclude each other');
  if (values.yard !== undefined && values.spot === undefined)
    throw new UsageError('--yard needs --spot, the name of a spot marked in it');
  return {
    pack: values.pack,
    place:
      values.station !== undefined
        ? { by: 'station', id: values.station }
        : values.at !== undefined
          ? { by: 'point', ...point(values.at) }
          : { by: 'postcode', code: values.postcode! },
    types: types(values.types),
    levels: values.level === undefined ? LEVELS : [oneOf('--level', LEVELS, values.level)],
    tree: {
      ageYears: values.age === undefined ? MATURE_TREE.ageYears : number('--age', values.age, 0, 200),
      condition: oneOf('--condition', CONDITIONS, values.condition ?? MATURE_TREE.condition),
      fruitLoad: values['fruit-load'] ?? MATURE_TREE.fruitLoad,
      container: values.container ?? MATURE_TREE.container,
      hardened: !values['not-hardened'],
      rootstock: oneOf('--rootstock', ROOTSTOCKS, values.rootstock ?? MATURE_TREE.rootstock),
    },
    spot: values.spot ?? null,
    yard: values.yard ?? null,
    measured: values.measured ?? null,
    cover: values.cover ?? null,
    years: values.years === undefined ? 10 : number('--years', values.years, 1, 100),
    format: values.json ? 'json' : values.csv ? 'csv' : 'text',
  };
}

/** `LAT,LON` or `LAT,LON,ELEV_M`. */
export function point(
  text: string,
  option = '--at',
): { lat: number; lon: number; elevationM: number | null } {
  const parts = text.split(',').map((part) => part.trim());
  const [lat, lon, elevation] = parts.map(Number);
  if (
    parts.length < 2 ||
    parts.length > 3 ||
    parts.some((part) => part === '' || !Number.isFinite(Number(part)))
  ) {
    throw new InputError(`${option} "${text}" is not LAT,LON or LAT,LON,ELEV_M in degrees and metres`);
  }
  if (Math.abs(lat) > 90) throw new InputError(`${option} latitude ${lat} is outside -90 to 90 degrees`);
  if (Math.abs(lon) > 180) throw new InputError(`${option} longitude ${lon} is outside -180 to 180 degrees`);
  return { lat, lon, elevationM: elevation ?? null };
}

function types(text: string | undefined): readonly CitrusType[] {
  if (text === undefined) return CITRUS_TYPES;
  return text.split(',').map((id) => {
    const type = findType(id.trim());
    if (type) return type;
    const known = CITRUS_TYPES.map((entry) => entry.id).join(', ');
    throw new InputError(`unknown type "${id.trim()}"; the types are ${known}`);
  });
}

function oneOf<T extends string>(option: string, allowed: readonly T[], value: string): T {
  const found = allowed.find((entry) => entry === value);
  if (found) return found;
  throw new InputError(`${option} "${value}" is not one of ${allowed.join(', ')}`);
}

function number(option: string, text: string, from: number, to: number): number {
  const value = Number(text);
  if (text.trim() !== '' && value >= from && value <= to) return value;
  throw new InputError(`${option} "${text}" is not a number from ${from} to ${to}`);
}
