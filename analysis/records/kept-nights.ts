import { COOL_HOURS_UNKNOWN, MISSING_HUNDREDTHS, SUSTAINED_COUNT } from './nights.ts';

/** The nights of a station or of a point with a minimum at or below 10 °C, by date. All arrays have one entry a night. */
export interface KeptNights {
  /** Day number of the morning, increasing. */
  readonly day: Int32Array;
  /** Label of the winter. */
  readonly winter: Int16Array;
  /** Index into NIGHT_KINDS. */
  readonly kind: Uint8Array;
  /** `sustained[j][i]`: hundredths of °C for SUSTAINED_HOURS[j], MISSING_HUNDREDTHS for unknown. */
  readonly sustained: readonly Int16Array[];
  /** Hours at or below 10 °C in the 500 hours before the night's noon end, -1 unknown. */
  readonly coolHours: Int16Array;
}

/** What `sql/kept-nights.sql` gives for a night: day, winter, kind, the levels in the order of SUSTAINED_HOURS, cool hours. */
export type KeptNightRow = readonly number[];

/** Rows of `sql/kept-nights.sql` as arrays. */
export function keptNights(rows: readonly KeptNightRow[]): KeptNights {
  return {
    day: Int32Array.from(rows, (row) => row[0]),
    winter: Int16Array.from(rows, (row) => row[1]),
    kind: Uint8Array.from(rows, (row) => row[2]),
    sustained: Array.from({ length: SUSTAINED_COUNT }, (_, j) =>
      Int16Array.from(rows, (row) => row[3 + j] ?? MISSING_HUNDREDTHS),
    ),
    coolHours: Int16Array.from(rows, (row) => row[3 + SUSTAINED_COUNT] ?? COOL_HOURS_UNKNOWN),
  };
}
