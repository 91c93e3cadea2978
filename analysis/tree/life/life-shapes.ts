/** What becomes of trees planted in every winter, as `assess --life` prints it. Shares 0-1, intervals 90 %, ages in winters since planting. */
export interface LifeReading {
  /** Share living by age, 1 to the horizon. */
  readonly living: readonly AgeShare[];
  readonly first_crop: AgeShare;
  readonly ten_years: AgeShare;
  readonly twenty_years: AgeShare;
  /** Age that half the trees reach; `null` where more than half outlive the horizon. */
  readonly median_years: {
    readonly years: number | null;
    readonly low: number | null;
    readonly high: number | null;
  };
  /** Crops picked in the first ten winters of plantings followed that long; `null`: none was. */
  readonly crops_in_ten: CropCount | null;
  /** The same when a crop counts as lost whose bloom or new growth was hit the spring or winter before. */
  readonly crops_in_ten_with_bloom: CropCount | null;
  /**
   * Of ten complete winters into which a living tree went old enough to bear, those without a crop: taken, or not carried while it
   * grew again. `null`: there was none.
   */
  readonly crops_lost_in_ten: number | null;
  /** Nights a winter on which the cover would have gone on over a living tree; `null` where nothing is put on at night. */
  readonly nights_covered: { readonly mean: number; readonly worst: number } | null;
  /** One a winter planted in, oldest first. */
  readonly plantings: readonly PlantingLife[];
}

/** Trees living after their winter of age `age`. */
export interface AgeShare {
  readonly age: number;
  /** Plantings whose record reaches that far, and how many of them lived. */
  readonly followed: number;
  readonly alive: number;
  /**
   * Share living of trees planted in every complete winter and followed round the record: after its last winter the first comes
   * again, so that every planting is followed as far and every winter is met at every age. `null`: no complete winter.
   */
  readonly share: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Kaplan-Meier estimate from the record as it runs; `null` from the first age on at which no living tree could be watched. */
  readonly kaplan_meier: number | null;
  /** `record`: some planting could be followed that far; `round`: only by going round the record. */
  readonly basis: 'record' | 'round';
  /** The share should the kill threshold lie at its hardy and at its tender end. */
  readonly if_threshold: { readonly low: number | null; readonly high: number | null };
}

export interface CropCount {
  readonly plantings: number;
  readonly median: number;
  /** What the worst tenth of the plantings had at most. */
  readonly worst_tenth: number;
}

/** What became of the tree planted before a winter. */
export interface PlantingLife {
  readonly winter: number;
  /** `killed`; `living` at the end of the record; `unknown`: killed in a winter that isn't complete. */
  readonly fate: 'killed' | 'living' | 'unknown';
  /** Winters lived through, the killing one not counted. */
  readonly years: number;
  readonly crops: number;
  /**
   * One letter a winter from the first: `.` too young to bear, `c` crop picked, `b` picked but bloom or new growth was hit, `f` crop lost, `l` leaf,
   * `w` wood, `k` killed, `r` no crop while it grows again, `?` winter not complete and no loss seen. The worst loss counts.
   */
  readonly course: string;
}
