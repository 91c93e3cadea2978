import { seededRandom } from '../../../analysis/math/seeded-random.ts';
import type { Site } from '../../../analysis/place/site.ts';
import type { Member } from '../../../analysis/place/station-network.ts';
import { MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from '../../../analysis/records/nights.ts';
import type { WinterTable } from '../../../analysis/records/winters.ts';

/** How the invented land is cold. */
export interface LandPlan {
  readonly seed: number;
  readonly winters: number;
  /** Part of an anomaly's variance that places share; the rest is each place's own. */
  readonly share?: number;
  /** Mean of the coldest nights at sea level in the middle of the land, °C. */
  readonly middleC?: number;
  /** Longitude of the middle of the land; a network can so be moved round the globe. */
  readonly middleLon?: number;
  /** -1 mirrors the land at the equator. */
  readonly side?: 1 | -1;
}

const MIDDLE_LAT = 31;
const FIRST_WINTER = 1960;
const WAVES = 60;
const LAPSE_C_PER_KM = -6.5;

/**
 * A land whose winters are known everywhere: a mean with a lapse rate and slow waves, a scale with a slow wave, and
 * standardised anomalies that are sums of long random waves (shared) and noise (a place's own). Tests estimate a point from
 * stations and compare with what the land says.
 */
export class InventedLand {
  readonly #waves: readonly { east: number; north: number }[];
  readonly #phases: Float64Array;
  readonly #plan: Required<LandPlan>;

  constructor(plan: LandPlan) {
    this.#plan = { share: 1, middleC: -3, middleLon: -42, side: 1, ...plan };
    const random = seededRandom(plan.seed);
    // Wavelengths of 600 km and more.
    this.#waves = Array.from({ length: WAVES }, () => ({
      east: (random.normal() * 2 * Math.PI) / 1800,
      north: (random.normal() * 2 * Math.PI) / 1800,
    }));
    this.#phases = Float64Array.from({ length: WAVES * plan.winters }, () => 2 * Math.PI * random.uniform());
  }

  /** A site so many km east and north of the middle. */
  site(eastKm: number, northKm: number, elevationM: number | null = 0, coastKm: number | null = null): Site {
    const { middleLon, side } = this.#plan;
    const lon = middleLon + eastKm / (111.195 * Math.cos((MIDDLE_LAT * Math.PI) / 180));
    return {
      lat: side * (MIDDLE_LAT + northKm / 111.195),
      lon: lon >= 180 ? lon - 360 : lon,
      elevationM,
      coastKm,
    };
  }

  /** Sites scattered over a square, with heights up to `highestM`. */
  scattered(count: number, halfSideKm: number, highestM: number, seed = 1): Site[] {
    const random = seededRandom(1000 + seed);
    const somewhere = () => (2 * random.uniform() - 1) * halfSideKm;
    return Array.from({ length: count }, () =>
      this.site(somewhere(), somewhere(), Math.round(highestM * random.uniform())),
    );
  }

  meanC(site: Site): number {
    const { east, north } = this.#from(site);
    const { middleC } = this.#plan;
    return (
      middleC +
      (LAPSE_C_PER_KM * (site.elevationM ?? 0)) / 1000 +
      0.8 * Math.sin(east / 150) -
      0.007 * north +
      0.5 * Math.cos(north / 130)
    );
  }

  scaleC(site: Site): number {
    return 2 * Math.exp(0.15 * Math.sin(this.#from(site).north / 200));
  }

  /** The coldest night of each winter, °C. `own` seeds the place's own part of the anomalies. */
  minimaC(site: Site, own: number): Float64Array {
    const { share, winters } = this.#plan;
    const { east, north } = this.#from(site);
    const random = seededRandom(5000 + own);
    const [meanC, scaleC] = [this.meanC(site), this.scaleC(site)];
    return Float64Array.from({ length: winters }, (_, w) => {
      let shared = 0;
      for (let m = 0; m < WAVES; m++) {
        const { east: e, north: n } = this.#waves[m];
        shared += Math.cos(e * east + n * north + this.#phases[w * WAVES + m]);
      }
      shared *= Math.sqrt(2 / WAVES);
      const anomaly = Math.sqrt(share) * shared + Math.sqrt(1 - share) * random.normal();
      return meanC + scaleC * anomaly;
    });
  }

  /** A station of the land with its winters. */
  member(id: string, site: Site, own: number, known: (w: number) => boolean = () => true): Member {
    return { id, site, winters: wintersOf(this.minimaC(site, own), known) };
  }

  members(sites: readonly Site[], known?: (station: number, w: number) => boolean): Member[] {
    return sites.map((site, i) =>
      this.member(`S${String(i).padStart(3, '0')}`, site, i, known && ((w) => known(i, w))),
    );
  }

  #from({ lat, lon }: Site): { east: number; north: number } {
    const { middleLon, side } = this.#plan;
    const turn = ((((lon - middleLon + 180) % 360) + 360) % 360) - 180;
    return {
      east: turn * 111.195 * Math.cos((MIDDLE_LAT * Math.PI) / 180),
      north: (side * lat - MIDDLE_LAT) * 111.195,
    };
  }
}

/** Degrees that an hour more of unbroken cold is warmer by. */
export const WARMER_AN_HOUR_C = 0.2;

/**
 * A station's winters from its coldest nights: each longer duration a little warmer, two winters in three calm, the other
 * kind 1.5 °C above; NaN for a winter without a cold night.
 */
export function wintersOf(
  minimaC: ArrayLike<number>,
  known: (w: number) => boolean = () => true,
): WinterTable {
  const count = minimaC.length;
  const level = (kind: number, j: number, w: number): number => {
    if (kind === 2 || Number.isNaN(minimaC[w])) return MISSING_HUNDREDTHS;
    const above = (w % 3 === 0 ? 1 : 0) === kind ? 0 : 1.5;
    return Math.round(100 * (minimaC[w] + above + WARMER_AN_HOUR_C * SUSTAINED_HOURS[j]));
  };
  return {
    winter: Int16Array.from({ length: count }, (_, w) => FIRST_WINTER + w),
    complete: Uint8Array.from({ length: count }, (_, w) => (known(w) ? 1 : 0)),
    reason: Array.from({ length: count }, (_, w) => (known(w) ? '' : 'January misses 9 nights')),
    coldest: NIGHT_KINDS.map((_, k) =>
      SUSTAINED_HOURS.map((__, j) => Int16Array.from({ length: count }, (___, w) => level(k, j, w))),
    ),
    coldestDay: NIGHT_KINDS.map((_, k) =>
      SUSTAINED_HOURS.map(() =>
        Int32Array.from({ length: count }, (__, w) =>
          level(k, 0, w) === MISSING_HUNDREDTHS ? 0 : (FIRST_WINTER + w - 1970) * 365 + 10 + k,
        ),
      ),
    ),
  };
}

/** Coldest of each winter over the kinds of night for one duration, °C; NaN where there is none. */
export function levelsOf({ coldest }: WinterTable, j = 0): Float64Array {
  return Float64Array.from(coldest[0][j], (_, w) => {
    const known = coldest.map((kind) => kind[j][w]).filter((level) => level !== MISSING_HUNDREDTHS);
    return known.length ? Math.min(...known) / 100 : NaN;
  });
}
