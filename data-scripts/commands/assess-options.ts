import { parseArgs } from 'node:util';
import { BATCH_DRAWS, BATCH_LIMITS } from '../../analysis/answer/batch.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { CONDITIONS_OF_COVER, MEASURE_IDS } from '../../analysis/cover/cover-ids.ts';
import {
  HARVEST_CALENDARS,
  PICKINGS,
  type HarvestCalendar,
  type Picking,
} from '../../analysis/tree/harvest.ts';
import { NAMED_SPOTS } from '../../analysis/spot/named-spots.ts';
import { CITRUS_TYPES, findType, type CitrusType } from '../../analysis/tree/catalogue.ts';
import { LEVELS, type Level } from '../../analysis/tree/levels.ts';
import { CONDITIONS, MATURE_TREE, ROOTSTOCKS, type TreeState } from '../../analysis/tree/penalties.ts';
import { UsageError } from './run-command.ts';

/** Ages at which a tree may be planted, years. */
const START_AGE = { from: 1, to: 5 } as const;

export const ASSESS_HELP = `npm run assess -- --pack PACK (--station ID | --at LAT,LON[,ELEV_M] | --postcode CODE | --batch FILE) [options]

About how often a winter on record would have taken a citrus tree's fruit, leaves, wood or life.

Place
  --pack PACK            folder of a record pack
  --station ID           a station of the pack
  --at LAT,LON[,ELEV_M]  a point: answered from the nearest station with a long record, and said so
  --postcode CODE        a postcode of the pack: likewise

Many places
  --batch FILE           a table of places, separated by commas, semicolons or tabs, its columns in any order and named in its
                         first line: postcode, or lat and lon with or without elevation_m (or elevation_ft); label and
                         customer are kept. At most ${BATCH_LIMITS.rows} rows and ${BATCH_LIMITS.bytes / 1e6} MB. Prints one row a place and type as CSV (or --json):
                         fruit, leaf and kill with 90 % ranges (from ${BATCH_DRAWS} draws, not 1,000), how to grow it
                         (nights are not counted), and where it comes from. Rows that can't be answered are listed on
                         stderr with line and reason and don't stop the rest; exit 1 only when none can be
  --threads N            threads that answer a batch, 1 to 64 (default: by cores and places)

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

Life and year (night by night: these take a few seconds)
  --life                 adds what would have become of a tree planted in every winter
  --year                 adds the year: first and last dates of cold, harvest, what to do when
  --start-age N          years since planting a tree counts in its first winter, ${START_AGE.from} to ${START_AGE.to} (default: ${START_AGE.from})
  --picking P            ${PICKINGS.join(', ')} (default: ${PICKINGS[0]}): how long ripe fruit hangs
  --calendar C           ${HARVEST_CALENDARS.join(', ')} (default: by the place): whose months of ripeness are used

Answer
  --years N              chance of at least one hit within N years (default: 10)
  --json | --csv         one JSON object, or a table with one row a type and level (without life and year)
`;

export interface AssessRequest {
  readonly pack: string;
  readonly place:
    | { readonly by: 'station'; readonly id: string }
    | { readonly by: 'point'; readonly lat: number; readonly lon: number; readonly elevationM: number | null }
    | { readonly by: 'postcode'; readonly code: string }
    | { readonly by: 'batch'; readonly file: string; readonly threads: number | null };
  readonly types: readonly CitrusType[];
  readonly levels: readonly Level[];
  readonly tree: TreeState;
  readonly spot: string | null;
  /** File of the yard. */
  readonly yard: string | null;
  readonly measured: string | null;
  readonly cover: string | null;
  readonly years: number;
  /** Whether the life of trees, and the year, are wanted too. */
  readonly life: boolean;
  readonly year: boolean;
  readonly startAgeYears: number;
  readonly picking: Picking;
  /** `null`: the usual one of the place. */
  readonly calendar: HarvestCalendar | null;
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
      batch: { type: 'string' },
      threads: { type: 'string' },
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
      life: { type: 'boolean' },
      year: { type: 'boolean' },
      'start-age': { type: 'string' },
      picking: { type: 'string' },
      calendar: { type: 'string' },
      json: { type: 'boolean' },
      csv: { type: 'boolean' },
    },
  });
  if (values.help) return null;
  if (!values.pack) throw new UsageError('--pack is missing');
  const { station, at, postcode, batch } = values;
  if ([station, at, postcode, batch].filter((value) => value !== undefined).length !== 1) {
    throw new UsageError('exactly one of --station, --at, --postcode and --batch is needed');
  }
  const alone = (['life', 'year', 'level', 'years'] as const).find((option) => values[option] !== undefined);
  if (batch !== undefined && alone) throw new UsageError(`--${alone} is not told of a batch`);
  if (values.threads !== undefined && batch === undefined) throw new UsageError('--threads needs --batch');
  if (values.json && values.csv) throw new UsageError('--json and --csv exclude each other');
  const [life, year] = [values.life ?? false, values.year ?? false];
  if (values.csv && (life || year))
    throw new UsageError('--life and --year go with --json or a printed answer, not with --csv');
  if (values['start-age'] !== undefined && !life) throw new UsageError('--start-age needs --life');
  for (const option of ['picking', 'calendar'] as const) {
    if (values[option] !== undefined && !life && !year)
      throw new UsageError(`--${option} needs --life or --year`);
  }
  if (values.yard !== undefined && values.spot === undefined)
    throw new UsageError('--yard needs --spot, the name of a spot marked in it');
  return {
    pack: values.pack,
    place:
      batch !== undefined
        ? {
            by: 'batch',
            file: batch,
            threads: values.threads === undefined ? null : whole('--threads', values.threads, 1, 64),
          }
        : station !== undefined
          ? { by: 'station', id: station }
          : at !== undefined
            ? { by: 'point', ...point(at) }
            : { by: 'postcode', code: postcode! },
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
    life,
    year,
    startAgeYears:
      values['start-age'] === undefined
        ? START_AGE.from
        : whole('--start-age', values['start-age'], START_AGE.from, START_AGE.to),
    picking: oneOf('--picking', PICKINGS, values.picking ?? PICKINGS[0]),
    calendar: values.calendar === undefined ? null : oneOf('--calendar', HARVEST_CALENDARS, values.calendar),
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

function whole(option: string, text: string, from: number, to: number): number {
  const value = number(option, text, from, to);
  if (Number.isInteger(value)) return value;
  throw new InputError(`${option} "${text}" is not a whole number from ${from} to ${to}`);
}

function number(option: string, text: string, from: number, to: number): number {
  const value = Number(text);
  if (text.trim() !== '' && value >= from && value <= to) return value;
  throw new InputError(`${option} "${text}" is not a number from ${from} to ${to}`);
}
