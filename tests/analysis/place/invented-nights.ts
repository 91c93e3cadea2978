import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { Site } from '../../../analysis/place/site.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import { keptNights, type KeptNights } from '../../../analysis/records/kept-nights.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';
import { winterBounds } from '../../../analysis/winter/winter-year.ts';

export interface NightsPlan {
  readonly seed: number;
  readonly winters: number;
  readonly sites: readonly Site[];
  /** Mean of the nights in the middle of the winter, °C. */
  readonly middleC?: number;
  /** Part of a station's winters that aren't complete, and of its nights that are missing. */
  readonly gaps?: number;
  readonly south?: boolean;
}

export interface InventedNights {
  readonly members: readonly Member[];
  readonly nights: readonly KeptNights[];
}

const FIRST_WINTER = 1971;
const LAPSE_C_PER_KM = -6;

/**
 * Stations with nights: a season, weather that all share from night to night and place by place, a lapse rate, levels that
 * rise with the hours, kinds that stations name alike three times in four. The winters are what the nights say.
 */
export function inventedNights(plan: NightsPlan): InventedNights {
  const { seed, winters, sites, middleC = 1, gaps = 0, south = false } = plan;
  const hemisphere = south ? 'south' : 'north';
  const weather = seededRandom(seed);
  const days: {
    day: number;
    winter: number;
    season: number;
    shared: number;
    kind: number;
    length: number;
  }[] = [];
  let shared = 0;
  for (let w = 0; w < winters; w++) {
    const { first, last } = winterBounds(FIRST_WINTER + w, hemisphere);
    for (let day = first; day <= last; day++) {
      shared = 0.7 * shared + 3 * weather.normal();
      const season = 12 * (1 - Math.cos((2 * Math.PI * (day - first - 198)) / 365.25)) * 0.5;
      const kind = Math.floor(3 * weather.uniform());
      days.push({ day, winter: FIRST_WINTER + w, season, shared, kind, length: weather.uniform() });
    }
  }
  const stations = sites.map((site, s) => {
    const own = seededRandom(7919 * (seed + 1) + s);
    const rows: number[][] = [];
    const incomplete = Array.from({ length: winters }, () => own.uniform() < gaps);
    for (const { day, winter, season, shared: common, kind, length } of days) {
      const minimum =
        middleC + season + common + 1.5 * own.normal() + (LAPSE_C_PER_KM * (site.elevationM ?? 0)) / 1000;
      const rate = 0.2 + 0.3 * length + 0.2 * own.uniform();
      const called = own.uniform() < 0.75 ? kind : Math.floor(3 * own.uniform());
      if (own.uniform() < gaps / 3 || minimum > 10) continue;
      rows.push([
        day,
        winter,
        called,
        ...SUSTAINED_HOURS.map((hours) => Math.round(100 * (minimum + rate * hours))),
        coolHoursOf(s),
      ]);
    }
    const nights = keptNights(rows);
    return { nights, winters: wintersOfNights(nights, winters, incomplete) };
  });
  return {
    members: stations.map((station, s) => ({
      id: `N${String(s).padStart(2, '0')}`,
      site: sites[s],
      winters: station.winters,
    })),
    nights: stations.map(({ nights }) => nights),
  };
}

/** Coldest of each kind and duration by a plain loop; nothing of the program makes it. */
export function wintersOfNights(
  nights: KeptNights,
  winters: number,
  incomplete: readonly boolean[] = [],
  first = FIRST_WINTER,
): WinterTable {
  const table = <T extends Int16Array | Int32Array>(make: () => T): T[][] =>
    NIGHT_KINDS.map(() => SUSTAINED_HOURS.map(make));
  const coldest = table(() => new Int16Array(winters).fill(MISSING_HUNDREDTHS));
  const coldestDay = table(() => new Int32Array(winters));
  nights.day.forEach((day, i) => {
    const w = nights.winter[i] - first;
    const kind = nights.kind[i];
    nights.sustained.forEach((own, j) => {
      const best = coldest[kind][j][w];
      if (own[i] === MISSING_HUNDREDTHS || (best !== MISSING_HUNDREDTHS && best <= own[i])) return;
      coldest[kind][j][w] = own[i];
      coldestDay[kind][j][w] = day;
    });
  });
  return {
    winter: Int16Array.from({ length: winters }, (_, w) => first + w),
    complete: Uint8Array.from({ length: winters }, (_, w) => (incomplete[w] ? 0 : 1)),
    reason: Array.from({ length: winters }, (_, w) => (incomplete[w] ? 'January misses 9 nights' : '')),
    coldest,
    coldestDay,
  };
}

/** Cool hours on all nights of a station, by its number. */
export function coolHoursOf(station: number): number {
  return 100 + 10 * station;
}
