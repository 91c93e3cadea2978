/** A station as its archive describes it. Unknown metadata is `null`, never a guess. */
export interface Station {
  readonly id: string;
  readonly name: string;
  /** Degrees north, -90 to 90. */
  readonly lat: number | null;
  /** Degrees east, -180 to 180. */
  readonly lon: number | null;
  readonly elevationM: number | null;
}

/** A station whose coordinates are known; only such stations reach nights, winters and packs. */
export interface LocatedStation extends Station {
  readonly lat: number;
  readonly lon: number;
}
