import type { ReadingChoices } from '../../../analysis/spot/thermometer/calibrate.ts';
import { NO_CHOICES } from '../../../analysis/spot/thermometer/calibrate.ts';
import type { Mend } from '../../../analysis/spot/thermometer/mend.ts';
import type { KeptNights } from '../../../analysis/records/kept-nights.ts';
import { COOL_HOURS_UNKNOWN } from '../../../analysis/records/nights.ts';
import { keep, type Storage } from '../../state/kept.ts';

/** Where the browser keeps them. */
export const READINGS_KEY = 'citrus-winters-own-thermometer';

/** Nights of a station file that the reader loaded. */
export interface OwnStation {
  readonly name: string;
  /** From the place, km; `null` where the file doesn't say. */
  readonly awayKm: number | null;
  readonly notes: readonly string[];
  readonly nights: KeptNights;
}

/** What the browser keeps of the thermometer between visits. It goes nowhere else. */
export interface KeptReadings {
  readonly text: string;
  readonly name: string;
  readonly choices: ReadingChoices;
  readonly own: OwnStation | null;
}

/** Keep it, or forget it with an empty text. */
export function keepReadings(storage: Storage | null, kept: KeptReadings): void {
  if (kept.text === '' && kept.own === null) {
    keep(storage, READINGS_KEY, null);
    return;
  }
  const { own } = kept;
  const nights = own && {
    day: [...own.nights.day],
    winter: [...own.nights.winter],
    kind: [...own.nights.kind],
    minimum: [...own.nights.sustained[0]!],
  };
  keep(storage, READINGS_KEY, JSON.stringify({ ...kept, own: own && { ...own, nights } }));
}

/** What was kept, `null` when there is nothing or it can't be understood. */
export function readKeptReadings(storage: Storage | null): KeptReadings | null {
  try {
    const { text, name, choices, own } = JSON.parse(storage?.getItem(READINGS_KEY) ?? 'null') as Loose;
    if (typeof text !== 'string' || typeof name !== 'string') return null;
    return { text, name, choices: choicesOf(choices), own: own ? stationOf(own as Loose) : null };
  } catch {
    return null;
  }
}

/** Anything that storage may hold; a field that isn't there is undefined. */
type Loose = Readonly<Record<string, unknown>>;

/** Choices that make sense; the usual ones instead of those that don't. */
function choicesOf(value: unknown): ReadingChoices {
  const { unit, order, mends } = { ...(value as Partial<ReadingChoices> | null) };
  return {
    unit: unit === 'C' || unit === 'F' ? unit : NO_CHOICES.unit,
    order: order === 'day first' || order === 'month first' ? order : NO_CHOICES.order,
    mends: Array.isArray(mends) && mends.every(isMend) ? mends : NO_CHOICES.mends,
  };
}

function isMend(value: unknown): value is Mend {
  const { kind, days, unit, lines } = { ...(value as Loose | null) };
  return (
    kind === 'swap' ||
    (kind === 'shift' && (days === 1 || days === -1)) ||
    (kind === 'unit' && (unit === 'C' || unit === 'F')) ||
    (kind === 'leave-out' && isWhole(lines))
  );
}

/** A station with its nights, `null` where they aren't whole. */
function stationOf({ name, awayKm, notes, nights }: Loose): OwnStation | null {
  const { day, winter, kind, minimum } = { ...(nights as Loose | null) };
  const columns = [day, winter, kind, minimum];
  if (typeof name !== 'string' || !Array.isArray(notes) || !notes.every((note) => typeof note === 'string'))
    return null;
  if (awayKm !== null && !(typeof awayKm === 'number' && awayKm >= 0)) return null;
  if (!columns.every(isWhole) || new Set(columns.map(({ length }) => length)).size !== 1) return null;
  const [days, winters, kinds, minima] = columns;
  if (days.length === 0) return null;
  return {
    name,
    awayKm,
    notes,
    nights: {
      day: Int32Array.from(days),
      winter: Int16Array.from(winters),
      kind: Uint8Array.from(kinds),
      sustained: [Int16Array.from(minima)],
      coolHours: new Int16Array(days.length).fill(COOL_HOURS_UNKNOWN),
    },
  };
}

function isWhole(value: unknown): value is readonly number[] {
  return Array.isArray(value) && value.every((one) => Number.isInteger(one));
}
