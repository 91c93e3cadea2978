import type { KeptNights } from '../records/kept-nights.ts';
import {
  KEPT_NIGHT_MAX_C,
  MISSING_HUNDREDTHS,
  NIGHT_KINDS,
  SUSTAINED_COUNT,
  SUSTAINED_HOURS,
} from '../records/nights.ts';
import { withBareNights, type WinterNights } from './bare-nights.ts';
import { kindsOfNights } from './night-kinds.ts';
import type { NightPlan } from './night-plan.ts';
import { risingWithHours } from './rising-with-hours.ts';
import {
  coolHoursOfSources,
  nightsOfSources,
  rowsOfDays,
  standings,
  type SourceNights,
} from './winter-nights.ts';

/** The correction that makes a winter's coldest night meet the winter's level fades over so much warmth above it. Hundredths of °C. */
const FADE = 800;
/** The same for what then separates the kinds of night. */
const KIND_FADE = 10;
const KEPT_MAX = KEPT_NIGHT_MAX_C * 100;

/**
 * The nights of a point between stations: per winter and kind of night their coldest `S_h` equals the point's winters, and
 * `S_h` never falls as `h` grows.
 * @param nights of the plan's stations, in its order
 */
export function placeNights(plan: NightPlan, nights: readonly KeptNights[]): KeptNights {
  const rows = nights.map(({ winter }) => new WinterRows(winter));
  const told: { label: number; nights: WinterNights }[] = [];
  plan.winters.winter.forEach((label, w) => {
    const sources = plan.sources[w];
    if (!sources) return;
    const own = sources.stations.map((station, s): SourceNights => {
      const { from, to } = rows[station].of(label);
      return { nights: nights[station], from, to, part: sources.parts[s] };
    });
    const means = sources.stations.map((station) => plan.stationMeansC[station]);
    const made = nightsOfWinter(plan, w, own, means);
    if (made) told.push({ label, nights: made });
  });
  return {
    day: Int32Array.from(told.flatMap((winter) => [...winter.nights.days])),
    winter: Int16Array.from(told.flatMap(({ label, nights: { days } }) => Array.from(days, () => label))),
    kind: Uint8Array.from(told.flatMap((winter) => [...winter.nights.kinds])),
    sustained: Array.from({ length: SUSTAINED_COUNT }, (_, j) =>
      Int16Array.from(told.flatMap((winter) => [...winter.nights.sustained[j]])),
    ),
    coolHours: Int16Array.from(told.flatMap((winter) => [...winter.nights.coolHours])),
  };
}

function nightsOfWinter(
  { winters, meansC, hemisphere }: NightPlan,
  w: number,
  sources: readonly SourceNights[],
  stationMeansC: readonly Float64Array[],
): WinterNights | null {
  const levels = NIGHT_KINDS.map((_, kind) => winters.coldest[kind].map((own) => own[w]));
  const possible = levels.map(([minimum]) => minimum !== MISSING_HUNDREDTHS);
  const all = nightsOfSources(sources);
  if (!possible.includes(true)) return null;
  const standing = (rows: readonly Int32Array[], j: number): Float64Array => {
    const means = stationMeansC.map((own) => 100 * own[j]);
    const own = standings(sources, rows, j, means).map((level) => level + 100 * meansC[j]);
    const known = levels.map((byHours) => byHours[j]).filter((level) => level !== MISSING_HUNDREDTHS);
    meetLevel(own, [...own.keys()], known.length > 0 ? Math.min(...known) : NaN, FADE);
    return own;
  };
  const allRows = sources.map((source) => rowsOfDays(source, all));
  const minima = standing(allRows, 0);
  // As at a station, warmer nights aren't kept.
  const kept = [...all.keys()].filter((t) => Math.round(minima[t]) <= KEPT_MAX);
  const rows = allRows.map((own) => Int32Array.from(kept, (t) => own[t]));
  const sustained = SUSTAINED_HOURS.map((_, j) =>
    j === 0 ? Float64Array.from(kept, (t) => minima[t]) : standing(rows, j),
  );
  const kinds = kindsOfNights(
    sources,
    rows,
    levels.map(([minimum]) => minimum),
    sustained[0],
  );
  const met = sustained.map((own, j) => meetKinds(own, kinds, levels, j));
  sustained[0] = sustained[0].map((minimum) => Math.min(minimum, KEPT_MAX));
  const nights = {
    days: Int32Array.from(kept, (t) => all[t]),
    kinds,
    sustained: risingWithHours(sustained, met),
    coolHours: coolHoursOfSources(sources, rows),
  };
  return withBareNights(nights, winters, w, hemisphere);
}

/**
 * Moves the coldest nights of each kind to its level. Nights of a kind without a level become unknown.
 * @returns the nights that stand at a level
 */
function meetKinds(
  own: Float64Array,
  kinds: Uint8Array,
  levels: readonly (readonly number[])[],
  j: number,
): number[] {
  return levels.flatMap((byHours, kind) => {
    const nights = [...own.keys()].filter((t) => kinds[t] === kind);
    if (byHours[j] !== MISSING_HUNDREDTHS) return meetLevel(own, nights, byHours[j], KIND_FADE);
    for (const t of nights) own[t] = NaN;
    return [];
  });
}

/**
 * Moves nights so that their coldest stands at a level, warmer ones the less the warmer they are.
 * @returns the coldest
 */
function meetLevel(own: Float64Array, nights: readonly number[], level: number, fade: number): number[] {
  if (nights.length === 0) return [];
  const coldest = nights.reduce((best, t) => (own[t] < own[best] || Number.isNaN(own[best]) ? t : best));
  const lowest = own[coldest];
  const move = level - lowest;
  // A move to the warm side over less warmth than itself would turn the order round.
  const over = Math.max(fade, move);
  for (const t of nights) own[t] += move * Math.exp((lowest - own[t]) / over);
  own[coldest] = level;
  return [coldest];
}

/** Where each winter's nights stand among a station's. */
class WinterRows {
  readonly #from = new Map<number, { from: number; to: number }>();

  constructor(winter: Int16Array) {
    for (let from = 0; from < winter.length;) {
      let to = from;
      while (to < winter.length && winter[to] === winter[from]) to++;
      this.#from.set(winter[from], { from, to });
      from = to;
    }
  }

  of(label: number): { from: number; to: number } {
    return this.#from.get(label) ?? { from: 0, to: 0 };
  }
}
