import {
  KEPT_NIGHT_MAX_C,
  MISSING_HUNDREDTHS,
  NIGHT_BASES,
  NIGHT_KINDS,
  type NightTable,
} from '../records/nights.ts';
import { formatIsoDay } from '../units/calendar.ts';
import { winterOf, type Hemisphere } from '../winter/winter-year.ts';

const KEPT_MAX = KEPT_NIGHT_MAX_C * 100;

/** Lines of the `nights` table for one station: its nights with a minimum at or below 10 °C, by date. */
export function nightCsv(station: string, nights: NightTable, hemisphere: Hemisphere): string {
  const lines: string[] = [];
  for (let i = 0; i < nights.count; i++) {
    const minimum = nights.sustained[0][i];
    if (minimum === MISSING_HUNDREDTHS || minimum > KEPT_MAX) continue;
    const night = nights.firstNight + i;
    const cells = [
      csvText(station),
      formatIsoDay(night),
      winterOf(night, hemisphere),
      NIGHT_KINDS[nights.kind[i]],
      NIGHT_BASES[nights.basis[i]],
      hundredths(nights.tmin[i]),
      hundredths(nights.tmaxBefore[i]),
      hundredths(nights.tmaxAfter[i]),
      ...nights.sustained.map((column) => hundredths(column[i])),
      nights.coolHours[i] < 0 ? '' : nights.coolHours[i],
    ];
    lines.push(cells.join(','));
  }
  return lines.length === 0 ? '' : lines.join('\n') + '\n';
}

/** A text cell, quoted when it must be; empty text is quoted to tell it from an unknown. */
export function csvText(text: string): string {
  return text === '' || /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Hundredths of a degree as a decimal, exactly; '' for missing. */
function hundredths(value: number): string {
  if (value === MISSING_HUNDREDTHS) return '';
  const size = Math.abs(value);
  const digits = `${Math.trunc(size / 100)}.${String(size % 100).padStart(2, '0')}`;
  return value < 0 ? `-${digits}` : digits;
}
