import type { KeptNights } from '../records/kept-nights.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS, type NightKind } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import type { DayNumber } from '../units/calendar.ts';
import { toHundredths } from '../units/temperature.ts';
import { gainsByKindC, type Gains } from './winter-minima.ts';

/** Hits nearer than this to the one before belong to its spell: fewer than 3 nights without a hit between them. */
const SPELL_NIGHTS = 3;

/** Which nights hit: hours (one of SUSTAINED_HOURS), threshold plus penalties, gains; °C. */
export interface HitLimit {
  readonly hours: number;
  readonly limitC: number;
  readonly gains: Gains;
}

/** A night that hit, as `hits.sql` tells it of a station. */
export interface HitNight {
  readonly day: DayNumber;
  readonly winter: number;
  readonly kind: NightKind;
  /** Without gain, °C. */
  readonly minimumC: number;
  /** `S_hours` with the gain, °C. */
  readonly levelC: number;
  /** Number of the spell, from 1. */
  readonly spell: number;
}

/** The hits of a winter, as `hits-by-winter.sql` tells them of a station. */
export interface WinterHits {
  readonly winter: number;
  readonly nights: number;
  readonly spells: number;
  readonly firstDay: DayNumber;
  readonly lastDay: DayNumber;
  readonly coldestC: number;
  readonly complete: boolean;
}

/** Nights that hit, by date. @throws RangeError for hours that aren't kept */
export function hitNights(nights: KeptNights, limit: HitLimit): HitNight[] {
  const hits: HitNight[] = [];
  forEachHit(nights, limit, (i, levelC) => {
    const before = hits.at(-1);
    const opens = before === undefined || nights.day[i] - before.day > SPELL_NIGHTS;
    hits.push({
      day: nights.day[i],
      winter: nights.winter[i],
      kind: NIGHT_KINDS[nights.kind[i]],
      minimumC: nights.sustained[0][i] / 100,
      levelC,
      spell: (before?.spell ?? 0) + (opens ? 1 : 0),
    });
  });
  return hits;
}

/** Winters with a hit, by winter; a spell across two winters opens in each. */
export function hitsByWinter(
  nights: KeptNights,
  winters: Pick<WinterTable, 'winter' | 'complete'>,
  limit: HitLimit,
): WinterHits[] {
  const complete = completeWinters(winters);
  const result: WinterHits[] = [];
  for (const { day, winter, levelC } of hitNights(nights, limit)) {
    const before = result.at(-1);
    if (before?.winter !== winter) {
      result.push({
        winter,
        nights: 1,
        spells: 1,
        firstDay: day,
        lastDay: day,
        coldestC: levelC,
        complete: complete.has(winter),
      });
      continue;
    }
    result[result.length - 1] = {
      ...before,
      nights: before.nights + 1,
      spells: before.spells + (day - before.lastDay > SPELL_NIGHTS ? 1 : 0),
      lastDay: day,
      coldestC: Math.min(before.coldestC, levelC),
    };
  }
  return result;
}

/** How many nights of complete winters hit. */
export function countHitNights(
  nights: KeptNights,
  winters: Pick<WinterTable, 'winter' | 'complete'>,
  limit: HitLimit,
): number {
  const complete = completeWinters(winters);
  let count = 0;
  forEachHit(nights, limit, (i) => {
    if (complete.has(nights.winter[i])) count++;
  });
  return count;
}

function completeWinters({ winter, complete }: Pick<WinterTable, 'winter' | 'complete'>): Set<number> {
  return new Set(winter.filter((_, w) => complete[w] === 1));
}

function forEachHit(
  { kind, sustained }: KeptNights,
  { hours, limitC, gains }: HitLimit,
  use: (i: number, levelC: number) => void,
): void {
  const levels = sustained[SUSTAINED_HOURS.findIndex((kept) => kept === hours)];
  if (!levels)
    throw new RangeError(`Nights are kept for ${SUSTAINED_HOURS.join(', ')} hours, not for ${hours}.`);
  const limit = toHundredths(limitC);
  const gain = gainsByKindC(gains).map(toHundredths);
  levels.forEach((level, i) => {
    if (level === MISSING_HUNDREDTHS) return;
    const gained = level + gain[kind[i]];
    if (gained <= limit) use(i, gained / 100);
  });
}
