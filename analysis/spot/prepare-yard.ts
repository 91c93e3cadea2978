import { coefficientsOf, type Coefficients } from './coefficients.ts';
import { weightsOf, type KindWeights } from './combine.ts';
import { coldAir, type ColdAir } from './mechanisms/cold-air.ts';
import { yardAreas, type YardAreas } from './mechanisms/areas.ts';
import { bigWaterShares, slopeShares, type NightShares } from './mechanisms/surroundings.ts';
import { warmFaces, type WarmFaces } from './mechanisms/wall-warmth.ts';
import { windBarriers } from './mechanisms/wind-shelter.ts';
import type { BarrierRays } from './mechanisms/upright-rays.ts';
import { prepareObstacles, type PreparedObstacles } from './obstacles.ts';
import { newShares, type SpotShares } from './spot-shares.ts';
import type { Yard } from './yard.ts';

/**
 * A yard made ready for asking at many points. Holds working room, so it is not to be shared between threads; ready
 * again after every change of the yard.
 */
export interface PreparedYard {
  readonly yard: Yard;
  readonly latDeg: number;
  readonly coefficients: Coefficients;
  readonly calm: KindWeights;
  readonly windy: KindWeights;
  readonly obstacles: PreparedObstacles;
  readonly faces: WarmFaces;
  readonly wind: BarrierRays;
  readonly areas: YardAreas;
  readonly air: ColdAir;
  readonly bigWater: NightShares;
  readonly slope: NightShares;
  /** Working room, overwritten at each point. */
  readonly shares: SpotShares;
  readonly walls: Float64Array;
}

/** @param latDeg latitude; its sign says which way the midday sun stands */
export function prepareYard(yard: Yard, latDeg: number): PreparedYard {
  const coefficients = coefficientsOf(yard);
  return {
    yard,
    latDeg,
    coefficients,
    calm: weightsOf(coefficients, 'calm'),
    windy: weightsOf(coefficients, 'windy'),
    obstacles: prepareObstacles(yard),
    faces: warmFaces(yard, latDeg),
    wind: windBarriers(yard),
    areas: yardAreas(yard),
    air: coldAir(yard),
    bigWater: bigWaterShares(yard),
    slope: slopeShares(yard),
    shares: newShares(),
    walls: new Float64Array(2),
  };
}
