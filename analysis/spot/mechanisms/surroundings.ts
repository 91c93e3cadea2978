import type { Yard } from '../yard.ts';

/** Shares of a mechanism's full effect on calm and on windy nights, 0-1, alike all over the yard. */
export interface NightShares {
  readonly calm: number;
  readonly windy: number;
}

const NONE: NightShares = { calm: 0, windy: 0 };

/** A lake's row holds within 500 m; by 2 km 3.5 °F have become 1.5 °F. */
const LAKE = { fullWithinM: 500, decayM: 1500 / Math.log(3.5 / 1.5) };
/** The sea's row holds within 1 km and is lost over the next 10 to 20 km. */
const SEA = { fullWithinM: 1000, decayM: 5000 };

/** A hillside as steep as this has the table's effect (a design choice). */
const FULL_SLOPE_PERCENT = 5;

function cosineOfAngle(firstDeg: number, secondDeg: number): number {
  return Math.cos(((firstDeg - secondDeg) * Math.PI) / 180);
}

/**
 * Big water: less with distance. The table's row is for the shore that the cold wind reaches over the water; on windy
 * nights other shores get nothing, on calm nights half (inferred).
 */
export function bigWaterShares({
  bigWater,
  coldWindFromDeg,
}: Pick<Yard, 'bigWater' | 'coldWindFromDeg'>): NightShares {
  if (!bigWater) return NONE;
  const { fullWithinM, decayM } = bigWater.kind === 'sea' ? SEA : LAKE;
  const near = Math.exp(-Math.max(0, bigWater.distanceM - fullWithinM) / decayM);
  // Whole within 45° of the wind, nothing from 90° on.
  const crossed = Math.min(1, Math.max(0, cosineOfAngle(bigWater.bearingDeg, coldWindFromDeg)) * Math.SQRT2);
  return { calm: near * (0.5 + 0.5 * crossed), windy: near * crossed };
}

/**
 * The hillside: the middle and the crest of a slope are milder on calm nights, the more so the steeper it is; on windy
 * nights a slope is colder where it faces the cold wind and a crest is colder whatever it faces. The foot has no row.
 */
export function slopeShares({
  slope,
  coldWindFromDeg,
}: Pick<Yard, 'slope' | 'coldWindFromDeg'>): NightShares {
  if (!slope || slope.position === 'foot') return NONE;
  const calm = Math.min(1, slope.percent / FULL_SLOPE_PERCENT);
  const windward = (1 + cosineOfAngle(slope.towardsDeg, coldWindFromDeg)) / 2;
  return { calm, windy: slope.position === 'crest' ? calm : calm * windward };
}
