import type { KeptNights } from '../records/kept-nights.ts';
import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_COUNT } from '../records/nights.ts';
import { kindsByVote } from './night-kinds.ts';
import type { NightPlan } from './night-plan.ts';
import { risingWithHours } from './rising-with-hours.ts';
import { nightsOfSources, rowsOfDays, standings, type SourceNights } from './winter-nights.ts';

/** The correction that makes a winter's coldest night meet the winter's level fades over so much warmth above it. Hundredths of °C. */
const FADE = 800;
/** The same for what then separates the kinds of night. */
const KIND_FADE = 100;
const KEPT_MAX = KEPT_NIGHT_MAX_C * 100;

/** One winter's nights at a point. */
interface Nights {
  readonly days: Int32Array;
  readonly kinds: Uint8Array;
  readonly sustained: readonly Int16Array[];
}

/**
 * The nights of a point between stations: per winter and kind of night their coldest `S_h` equals the point's winters, and
 * `S_h` never falls as `h` grows.
 * @param nights of the plan's stations, in its order
 */
export function placeNights(plan: NightPlan, nights: readonly KeptNights[]): KeptNights {
  const rows = nights.map(({ winter }) => new WinterRows(winter));
  const told: { label: number; nights: Nights }[] = [];
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
  };
}

function nightsOfWinter(
  { winters, meansC }: NightPlan,
  w: number,
  sources: readonly SourceNights[],
  stationMeansC: readonly Float64Array[],
): Nights | null {
  const levels = NIGHT_KINDS.map((_, kind) => winters.coldest[kind].map((own) => own[w]));
  const possible = levels.map(([minimum]) => minimum !== MISSING_HUNDREDTHS);
  const all = nightsOfSources(sources);
  if (all.length === 0 || !possible.includes(true)) return null;
  const allRows = sources.map((source) => rowsOfDays(source, all));
  const standing = (rows: readonly Int32Array[], j: number) =>
    standings(
      sources,
      rows,
      j,
      stationMeansC.map((means) => 100 * means[j]),
    ).map((level) => level + 100 * meansC[j]);

  const minima = standing(allRows, 0);
  const allKinds = kindsByVote(sources, allRows, possible, minima);
  const met = [meetLevels(minima, allKinds, levels, 0)];
  // As at a station, warmer nights aren't kept.
  const kept = [...all.keys()].filter((t) => Math.round(minima[t]) <= KEPT_MAX);
  const pick = <A extends Int32Array | Uint8Array | Float64Array>(from: A) =>
    kept.map((t) => from[t]);
  const rows = allRows.map((own) => Int32Array.from(pick(own)));
  const kinds = Uint8Array.from(pick(allKinds));
  const sustained = [Float64Array.from(pick(minima))];
  met[0] = met[0].map((t) => kept.indexOf(t));
  for (let j = 1; j < SUSTAINED_COUNT; j++) {
    const own = standing(rows, j);
    met.push(meetLevels(own, kinds, levels, j));
    sustained.push(own);
  }
  return { days: Int32Array.from(pick(all)), kinds, sustained: risingWithHours(sustained, met) };
}

/**
 * Moves all nights so that their coldest stands at the winter's level, then those of each kind, warmer ones the less the
 * warmer they are. Nights of a kind without a level become unknown.
 * @returns the nights that stand at a level
 */
function meetLevels(
  own: Float64Array,
  kinds: Uint8Array,
  levels: readonly (readonly number[])[],
  j: number,
): number[] {
  const known = levels.map((byHours) => byHours[j]).filter((level) => level !== MISSING_HUNDREDTHS);
  if (known.length > 0) meetLevel(own, [...own.keys()], Math.min(...known), FADE);
  return levels.flatMap((byHours, kind) => {
    const level = byHours[j];
    const nights = [...own.keys()].filter((t) => kinds[t] === kind);
    if (level !== MISSING_HUNDREDTHS) return meetLevel(own, nights, level, KIND_FADE);
    for (const t of nights) own[t] = NaN;
    return [];
  });
}

/** @returns the coldest of the nights, which now stands at the level */
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
