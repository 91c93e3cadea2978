import { KEPT_NIGHT_MAX_C, MISSING_HUNDREDTHS, NIGHT_KINDS, SUSTAINED_HOURS } from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { separationKm, type Site } from './site.ts';

/** A station that takes part in estimates, with its winters. */
export interface Member {
  readonly id: string;
  readonly site: Site;
  readonly winters: WinterTable;
}

/** Fewest complete winters with a night at or below 10 °C of a station that takes part. */
export const FEWEST_WINTERS_OF_MEMBER = 10;

/** True when a station has winters enough to take part; one that hardly knows a cool night tells nothing of cold. */
export function canTakePart({ complete, coldest }: WinterTable): boolean {
  let cold = 0;
  for (let w = 0; w < complete.length; w++)
    if (complete[w] && coldest.some((byHours) => byHours[0][w] !== MISSING_HUNDREDTHS)) cold++;
  return cold >= FEWEST_WINTERS_OF_MEMBER;
}

/** Stations side by side on one axis of winters. */
export class StationNetwork {
  /** Label of each winter, without gaps. */
  readonly labels: Int16Array;
  /** Separation of every two members, km, n x n by rows. */
  readonly separationsKm: Float64Array;
  /** `complete[i * winters + w]`: 1 where the winter is complete at member i. */
  readonly complete: Uint8Array;
  readonly #values = new Map<number, Float64Array>();
  readonly #gaps = new Map<number, Float64Array>();

  /** @throws RangeError without a single member */
  constructor(readonly members: readonly Member[]) {
    if (members.length === 0) throw new RangeError('A network needs a station.');
    const spans = members.flatMap(({ winters: { winter } }) =>
      winter.length ? [[winter[0], winter.at(-1)!]] : [],
    );
    const first = Math.min(...spans.map(([start]) => start));
    const last = Math.max(...spans.map(([, end]) => end));
    this.labels = Int16Array.from({ length: Math.max(0, last - first + 1) }, (_, w) => first + w);
    const n = members.length;
    const count = this.labels.length;
    this.complete = new Uint8Array(n * count);
    members.forEach(({ winters }, i) =>
      winters.winter.forEach((label, w) => {
        this.complete[i * count + label - first] = winters.complete[w];
      }),
    );
    this.separationsKm = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < i; j++)
        this.separationsKm[i * n + j] = this.separationsKm[j * n + i] = separationKm(
          members[i].site,
          members[j].site,
        );
  }

  /** Where a member's own table has the winter `w` of the network's axis; it may lie outside the table. */
  row(member: number, w: number): number {
    const { winter } = this.members[member].winters;
    return winter.length === 0 ? -1 : this.labels[w] - winter[0];
  }

  /**
   * Coldest `S_h` of each complete winter over all kinds of night, without gains, °C, n x winters by rows; NaN for a winter
   * that isn't complete, 10 °C (the warmest night kept) for one without a night that cold.
   * @param j index into SUSTAINED_HOURS
   */
  valuesC(j: number): Float64Array {
    let values = this.#values.get(j);
    if (!values) {
      values = this.#readValues(j);
      this.#values.set(j, values);
    }
    return values;
  }

  /**
   * How far the coldest night of a kind stands above the winter's coldest, °C, n x winters by rows; NaN where the winter
   * isn't complete or had no such night.
   * @param kind index into NIGHT_KINDS
   */
  gapsC(j: number, kind: number): Float64Array {
    const key = j * NIGHT_KINDS.length + kind;
    let gaps = this.#gaps.get(key);
    if (!gaps) {
      const values = this.valuesC(j);
      const count = this.labels.length;
      gaps = values.map((value, at) => {
        const member = Math.floor(at / count);
        const level = this.members[member].winters.coldest[kind][j][this.row(member, at % count)];
        return level === undefined || level === MISSING_HUNDREDTHS ? NaN : level / 100 - value;
      });
      this.#gaps.set(key, gaps);
    }
    return gaps;
  }

  #readValues(j: number): Float64Array {
    if (!(j in SUSTAINED_HOURS)) throw new RangeError(`There is no duration ${j}.`);
    const count = this.labels.length;
    const values = new Float64Array(this.members.length * count).fill(NaN);
    this.members.forEach(({ winters }, i) => {
      for (let w = 0; w < count; w++) {
        if (!this.complete[i * count + w]) continue;
        let coldest = KEPT_NIGHT_MAX_C;
        for (const kind of winters.coldest) {
          const level = kind[j][this.row(i, w)];
          if (level !== MISSING_HUNDREDTHS) coldest = Math.min(coldest, level / 100);
        }
        values[i * count + w] = coldest;
      }
    });
    return values;
  }
}
