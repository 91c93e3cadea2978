import type { KeptNights } from '../records/kept-nights.ts';
import { COOL_HOURS_UNKNOWN, KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS } from '../records/nights.ts';

/** One station's nights of one winter, and how much they count. */
export interface SourceNights {
  readonly nights: KeptNights;
  /** First and one past the last of the winter's nights. */
  readonly from: number;
  readonly to: number;
  /** 0-1; those of a winter add up to 1. */
  readonly part: number;
}

/** Estimated above this, a night that a station doesn't list was too warm to be kept; below, it is a gap. Hundredths of °C. */
const LIKELY_WARM = 500;

/** Days on which any of the stations kept a night, increasing. */
export function nightsOfSources(sources: readonly SourceNights[]): Int32Array {
  const days = new Set<number>();
  for (const { nights, from, to } of sources) for (let i = from; i < to; i++) days.add(nights.day[i]);
  return Int32Array.from(days).sort();
}

/** Row of each day among a station's nights, -1 where it kept none. */
export function rowsOfDays({ nights, from, to }: SourceNights, days: Int32Array): Int32Array {
  let i = from;
  return days.map((day) => {
    while (i < to && nights.day[i] < day) i++;
    return i < to && nights.day[i] === day ? i : -1;
  });
}

/**
 * A point's nights of one winter for one duration, as if its winters had the mean of those around it: each station's nights
 * about the mean of its winters, hundredths of °C. The order of the nights is that of the stations' average; the levels
 * they stand at are averaged in order of coldness (coldest with coldest and so on), so that nights are spread as at a
 * station: averages night by night would be too much alike.
 * @param rows by station, see {@link rowsOfDays}
 * @param means of the stations' winters, hundredths of °C
 * @returns level about the mean by day; NaN where no station knows it
 */
export function standings(
  sources: readonly SourceNights[],
  rows: readonly Int32Array[],
  j: number,
  means: ArrayLike<number>,
): Float64Array {
  const count = rows[0].length;
  const levels = sources.map(({ nights }, s) =>
    Float64Array.from(rows[s], (row) => {
      const level = row < 0 ? MISSING_HUNDREDTHS : nights.sustained[j][row];
      return level === MISSING_HUNDREDTHS ? NaN : level - means[s];
    }),
  );
  const average = new Float64Array(count);
  for (let t = 0; t < count; t++) {
    const known = averageOf(sources, levels, t);
    if (!Number.isNaN(known))
      sources.forEach((_, s) => {
        if (!Number.isNaN(levels[s][t])) return;
        // Not on the station's list: too warm for it, or a gap.
        const warm = rows[s][t] < 0 && means[s] + known > LIKELY_WARM;
        levels[s][t] = warm ? Math.max(known, KEPT_NIGHT_MAX_C * 100 - means[s]) : known;
      });
    average[t] = averageOf(sources, levels, t);
  }
  return inOrderOf(average, sources, levels);
}

/** Weighted mean of what the stations know of a night; NaN when none knows it. */
function averageOf(sources: readonly SourceNights[], levels: readonly Float64Array[], t: number): number {
  let [sum, all] = [0, 0];
  for (let s = 0; s < sources.length; s++) {
    const level = levels[s][t];
    if (Number.isNaN(level)) continue;
    sum += sources[s].part * level;
    all += sources[s].part;
  }
  return all > 0 ? sum / all : NaN;
}

function inOrderOf(
  average: Float64Array,
  sources: readonly SourceNights[],
  levels: readonly Float64Array[],
): Float64Array {
  const result = new Float64Array(average.length).fill(NaN);
  const order = Array.from(average, (_, t) => t).filter((t) => !Number.isNaN(average[t]));
  order.sort((a, b) => average[a] - average[b] || a - b);
  const sorted = levels.map((own) => own.filter((level) => !Number.isNaN(level)).sort());
  order.forEach((t, rank) => {
    result[t] = sources.reduce((sum, { part }, s) => sum + part * sorted[s][rank], 0);
  });
  return result;
}

/**
 * Cool hours before each night, the stations' weighted mean; {@link COOL_HOURS_UNKNOWN} where none knows them. Not corrected
 * for how much colder the point is: on a colder point trees harden somewhat more than it says, so that it errs to the cold.
 * @param rows by station, see {@link rowsOfDays}
 */
export function coolHoursOfSources(
  sources: readonly SourceNights[],
  rows: readonly Int32Array[],
): Int16Array {
  return Int16Array.from(rows[0], (_, t) => {
    let [sum, all] = [0, 0];
    sources.forEach(({ nights, part }, s) => {
      const row = rows[s][t];
      const hours = row < 0 ? COOL_HOURS_UNKNOWN : nights.coolHours[row];
      if (hours === COOL_HOURS_UNKNOWN) return;
      sum += part * hours;
      all += part;
    });
    return all > 0 ? Math.round(sum / all) : COOL_HOURS_UNKNOWN;
  });
}
