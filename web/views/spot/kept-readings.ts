import type { ReadingChoices } from '../../../analysis/spot/thermometer/calibrate.ts';
import { NO_CHOICES } from '../../../analysis/spot/thermometer/calibrate.ts';
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
    const text = storage?.getItem(READINGS_KEY) ?? null;
    if (text === null) return null;
    const kept = JSON.parse(text) as KeptReadings & { own: { nights: Record<string, number[]> } | null };
    if (typeof kept.text !== 'string') return null;
    const nights = kept.own?.nights as Record<'day' | 'winter' | 'kind' | 'minimum', number[]> | undefined;
    return {
      text: kept.text,
      name: kept.name,
      choices: { ...NO_CHOICES, ...kept.choices },
      own: nights
        ? {
            ...kept.own!,
            nights: {
              day: Int32Array.from(nights.day),
              winter: Int16Array.from(nights.winter),
              kind: Uint8Array.from(nights.kind),
              sustained: [Int16Array.from(nights.minimum)],
              coolHours: new Int16Array(nights.day.length).fill(COOL_HOURS_UNKNOWN),
            },
          }
        : null,
    };
  } catch {
    return null;
  }
}
