import type { KeptNights } from '../records/kept-nights.ts';
import { COOL_HOURS_UNKNOWN } from '../records/nights.ts';
import { fahrenheitToCelsius } from '../units/temperature.ts';
import { seasonDayOfDate } from '../winter/season-day.ts';
import { winterBounds, type Hemisphere } from '../winter/winter-year.ts';
import { bloomWindow, NEW_LEAVES_MATURE_DAYS } from './bloom.ts';
import { dayInWinter } from './day-in-winter.ts';
import type { HarvestCalendar } from './harvest.ts';

/** Bloom and new leaves are taken at or below this (S05: 31 °F), °C. */
export const FLUSH_LIMIT_C = fahrenheitToCelsius(31);
/** Held so long, one of SUSTAINED_HOURS: S05 gives no time, a design choice. */
export const FLUSH_HOURS = 1;
/** So many warm nights in a row in the cold months draw new leaves: a design choice. */
export const WARM_SPELL_NIGHTS = 10;

/** Warm nights before this day are autumn, not a warm spell in the cold: 15 December, south of the equator 15 June. */
const SPELLS_FROM = { north: seasonDayOfDate(12, 15, 'north'), south: seasonDayOfDate(6, 15, 'south') };

/**
 * Nights on which bloom or new growth is out (1): those of the main bloom, and the six weeks after a warm spell in which new
 * leaves are tender (S05). Warm nights (minimum above 10 °C) are dates that aren't kept. Dates are no spell where the record
 * breaks off: where the cool hours, known before, are unknown after.
 */
export function flushOfNights(
  nights: KeptNights,
  calendar: HarvestCalendar,
  hemisphere: Hemisphere,
): Uint8Array {
  const { day, winter } = nights;
  const bloom = bloomWindow(calendar, hemisphere);
  const flush = new Uint8Array(day.length);
  let [spellsFrom, bloomFrom, bloomTo, spellEnd] = [0, 0, 0, -Infinity];
  for (let i = 0; i < day.length; i++) {
    const opens = i === 0 || winter[i] !== winter[i - 1];
    if (opens) {
      spellsFrom = dayInWinter(winter[i], SPELLS_FROM[hemisphere], hemisphere);
      bloomFrom = dayInWinter(winter[i], bloom.fromDay, hemisphere);
      bloomTo = dayInWinter(winter[i], bloom.toDay, hemisphere);
      spellEnd = -Infinity;
    }
    const warmFrom = opens ? winterBounds(winter[i], hemisphere).first : day[i - 1] + 1;
    const warmNights = day[i] - Math.max(spellsFrom, warmFrom);
    if (warmNights >= WARM_SPELL_NIGHTS && !breaksOff(nights, i, opens)) spellEnd = day[i] - 1;
    const inBloom = day[i] >= bloomFrom && day[i] <= bloomTo;
    flush[i] = inBloom || day[i] - spellEnd <= NEW_LEAVES_MATURE_DAYS ? 1 : 0;
  }
  return flush;
}

function breaksOff({ coolHours }: KeptNights, i: number, opens: boolean): boolean {
  if (coolHours[i] !== COOL_HOURS_UNKNOWN) return false;
  return opens || coolHours[i - 1] !== COOL_HOURS_UNKNOWN;
}
