import type { DateOrder } from '../../read/dates.ts';
import type { KeptNights } from '../../records/kept-nights.ts';
import { dateFaults } from './date-faults.ts';
import { driftOf, type Drift } from './drift.ts';
import { estimateOffset, type OffsetEstimate } from './estimate-offset.ts';
import type { Fault } from './fault.ts';
import { instrumentFaults } from './instrument-faults.ts';
import { applyMends, type Mend } from './mend.ts';
import { pairNights, type Pairing } from './pair-nights.ts';
import { pairingProblem, type PairingProblem } from './pairing-words.ts';
import type { ReadReadings } from './read-readings.ts';
import { decideReadingUnit, readingsInC, type UnitBasis } from './reading-unit.ts';
import type { NightReading, ReadingUnit } from './spot-reading.ts';

/** What the reader of the page decided about the readings. */
export interface ReadingChoices {
  /** `null`: as the text or the station tells. */
  readonly unit: ReadingUnit | null;
  readonly order: DateOrder;
  /** Accepted, in order. */
  readonly mends: readonly Mend[];
}

export const NO_CHOICES: ReadingChoices = { unit: null, order: 'auto', mends: [] };

/** Nights to compare with, and what is known of them. */
export interface Compared {
  readonly nights: KeptNights;
  /** Words for where they come from, at the start of a sentence: `The pack’s record`. */
  readonly from: string;
  readonly latDeg: number;
}

/** Everything that readings say beside a station's nights. */
export interface Calibration {
  readonly unit: ReadingUnit;
  readonly unitBasis: UnitBasis;
  /** After the mends, by date. */
  readonly readings: readonly NightReading[];
  readonly pairing: Pairing;
  /** Why there is no result, `null` where there is one. */
  readonly problem: PairingProblem | null;
  readonly faults: readonly Fault[];
  readonly estimate: OffsetEstimate;
  /** Over the calm nights. */
  readonly drift: Drift;
}

/**
 * Compares readings with a station's nights: unit, mends, pairs, faults, offset.
 * @param sayUnit unit of the sentences.
 */
export function calibrate(
  read: ReadReadings,
  compared: Compared,
  choices: ReadingChoices,
  sayUnit: ReadingUnit,
): Calibration {
  const { nights } = compared;
  const chosen = choices.mends.reduce(
    (unit, mend) => (mend.kind === 'unit' ? mend.unit : unit),
    choices.unit,
  );
  const { unit, basis } = decideReadingUnit(read.readings, nights, read.unit, chosen);
  const readings = applyMends(readingsInC(read.readings, unit), choices.mends);
  const pairing = pairNights(readings, nights);
  const wrongDates = dateFaults(readings, nights, sayUnit);
  const wrongValues =
    wrongDates.length > 0 ? [] : instrumentFaults(readings, pairing.pairs, nights, unit, sayUnit);
  return {
    unit,
    unitBasis: basis,
    readings,
    pairing,
    problem: pairingProblem(readings, nights, pairing, { ...compared, unit: sayUnit }),
    faults: [...wrongDates, ...wrongValues],
    estimate: estimateOffset(pairing.pairs),
    drift: driftOf(pairing.pairs.filter(({ kind }) => kind === 'calm')),
  };
}
