/**
 * One station's winters. Entry `i` describes winter `winter[i]` (labelled by the year of its January; the calendar year
 * south of the equator), in increasing order without gaps from the first to the last winter with any night.
 * All levels are hundredths of °C with MISSING_HUNDREDTHS (-32768) for "no such night".
 */
export interface WinterTable {
  readonly winter: Int16Array;
  /** 1 when the winter is complete by the rule of design section 3.3. */
  readonly complete: Uint8Array;
  /**
   * 1 when the winter is complete and October and April are whole too, so that its first and last dates of cold count.
   * Left out where it isn't known: in packs built before it was kept, and between stations.
   */
  readonly datesWhole?: Uint8Array;
  /** Why a winter is not complete, '' when it is. */
  readonly reason: readonly string[];
  /** `coldest[kind][j][i]`: smallest S_h for SUSTAINED_HOURS[j] over that kind's nights of winter i (kinds as NIGHT_KINDS). */
  readonly coldest: readonly (readonly Int16Array[])[];
  /** `coldestDay[kind][j][i]`: day number of that night, 0 where none. */
  readonly coldestDay: readonly (readonly Int32Array[])[];
}
