import { quantileType7 } from '../../math/quantile.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import type { Mend } from './mend.ts';
import { pairNights } from './pair-nights.ts';
import type { NightReading } from './spot-reading.ts';

export const FAULT_IDS = ['swapped', 'shifted', 'unit', 'sun', 'indoors', 'far', 'stuck', 'outlier'] as const;
export type FaultId = (typeof FAULT_IDS)[number];

/** Something odd about readings: what was seen, and what would mend it. Nothing is changed before the reader says so. */
export interface Fault {
  readonly id: FaultId;
  /** One sentence with the figures that led to it. */
  readonly sentence: string;
  /** What the button says, with the change it makes; `null` where only the reader can mend it. */
  readonly mend: { readonly label: string; readonly mend: Mend } | null;
}

/** How well readings follow the station: nights on both sides, centre and spread of the differences, °C. */
export interface Match {
  readonly nights: number;
  readonly centreC: number;
  /** Median distance from the centre, times 1.4826: the standard deviation of normal noise; NaN with under 3 nights. */
  readonly spreadC: number;
  /** Mean distance from the centre, each night's held to 8 °C: tells a bad match from a good one more surely. */
  readonly distanceC: number;
}

/** A night further off than this counts as so far, °C. */
const DISTANCE_MAX_C = 8;
/** Three nights or more can match. */
const FEWEST = 3;

export function matchOf(readings: readonly NightReading[], nights: KeptNights): Match {
  const differences = pairNights(readings, nights).pairs.map(({ differenceC }) => differenceC);
  const { centreC, spreadC } = centreAndSpread(differences);
  const held = differences.map((value) => Math.min(Math.abs(value - centreC), DISTANCE_MAX_C));
  const distanceC = held.reduce((sum, value) => sum + value, 0) / held.length;
  return { nights: differences.length, centreC, spreadC, distanceC };
}

/** Median, and median distance from it as a standard deviation; NaN of fewer than three values. */
export function centreAndSpread(values: readonly number[]): { centreC: number; spreadC: number } {
  if (values.length < FEWEST) return { centreC: NaN, spreadC: NaN };
  const centreC = quantileType7(values, 0.5);
  const spreadC =
    1.4826 *
    quantileType7(
      values.map((value) => Math.abs(value - centreC)),
      0.5,
    );
  return { centreC, spreadC };
}
