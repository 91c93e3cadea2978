import { AZIMUTHS, type PreparedObstacles } from './obstacles.ts';

const HALF = AZIMUTHS / 2;
const AZIMUTHS_PER_RADIAN = AZIMUTHS / (2 * Math.PI);
/** Nearest that a thing is taken to be, m: keeps a point on a wall from dividing by nothing. */
const NEAREST_M = 1e-6;

/**
 * Looks at a thing's sides from a point: for every azimuth that meets a side, the distance. Solid things raise the
 * horizon (of a building only the sides turned towards the point are met), crowns leave their crossings for `addBands`. Each side is met only by the azimuths between its two
 * corners, and the corner between two sides belongs to one of them, so that outlines are crossed an even number of
 * times from outside and an odd one from within.
 * @returns whether the point lies within the thing's outline
 */
function lookAt(prepared: PreparedObstacles, thing: number, eastM: number, northM: number, topM: number) {
  const { cornerEast, cornerNorth, outlook, east, north } = prepared;
  const { solid, crossingCount, crossings } = outlook;
  const crown = prepared.crown[thing] === 1;
  const first = prepared.firstCorner[thing];
  const end = prepared.firstCorner[thing + 1];
  const closed = prepared.closed[thing] === 1;
  const facing = prepared.facing[thing];
  const topSquared = topM * topM;
  let before = closed ? end - 1 : first;
  let beforeEast = cornerEast[before] - eastM;
  let beforeNorth = cornerNorth[before] - northM;
  let beforeTurn = Math.atan2(beforeEast, beforeNorth) * AZIMUTHS_PER_RADIAN - 0.5;
  let beforeCell = Math.ceil(beforeTurn);
  let turned = 0;
  for (let at = closed ? first : first + 1; at < end; at++) {
    const atEast = cornerEast[at] - eastM;
    const atNorth = cornerNorth[at] - northM;
    const turn = Math.atan2(atEast, atNorth) * AZIMUTHS_PER_RADIAN - 0.5;
    const cell = Math.ceil(turn);
    const across = turn - beforeTurn;
    const from = across > HALF ? beforeCell + AZIMUTHS : beforeCell;
    const to = across < -HALF ? cell + AZIMUTHS : cell;
    turned += to - from;
    if (facing === 0 ? from !== to : (to - from) * facing > 0) {
      const sideEast = atEast - beforeEast;
      const sideNorth = atNorth - beforeNorth;
      const lever = beforeEast * sideNorth - beforeNorth * sideEast;
      const last = from < to ? to : from;
      for (let k = from < to ? from : to; k < last; k++) {
        const azimuth = k < 0 ? k + AZIMUTHS : k >= AZIMUTHS ? k - AZIMUTHS : k;
        const met = lever / (east[azimuth] * sideNorth - north[azimuth] * sideEast);
        const distanceM = met > NEAREST_M ? met : NEAREST_M;
        if (crown) {
          crossings[crossingCount[azimuth]++ * AZIMUTHS + azimuth] = distanceM;
        } else {
          const up = topSquared / (topSquared + distanceM * distanceM);
          if (up > solid[azimuth]) solid[azimuth] = up;
        }
      }
    }
    before = at;
    beforeEast = atEast;
    beforeNorth = atNorth;
    beforeTurn = turn;
    beforeCell = cell;
  }
  return closed && turned !== 0;
}

/** Sorts the crossings of one azimuth by distance; they lie a whole round of azimuths apart. */
function sortCrossings(crossings: Float64Array, azimuth: number, count: number) {
  for (let i = 1; i < count; i++) {
    const value = crossings[i * AZIMUTHS + azimuth];
    let j = i * AZIMUTHS + azimuth;
    for (; j >= AZIMUTHS && crossings[j - AZIMUTHS] > value; j -= AZIMUTHS)
      crossings[j] = crossings[j - AZIMUTHS];
    crossings[j] = value;
  }
}

/**
 * Turns the crossings of a crown's outline into bands of elevation: from the underside at the far edge to the top at
 * the near edge, straight up where the point stands beneath. Parts of one crown behind one another close the sky once.
 */
function addBands({ outlook, density }: PreparedObstacles, crown: number, baseM: number, topM: number) {
  const { bandCount, bandLow, bandHigh, bandDensity, crossingCount, crossings } = outlook;
  for (let azimuth = 0; azimuth < AZIMUTHS; azimuth++) {
    const count = crossingCount[azimuth];
    if (count === 0) continue;
    sortCrossings(crossings, azimuth, count);
    let free = 1;
    for (let at = count % 2 === 1 ? -1 : 0; at + 1 < count; at += 2) {
      const nearM = at < 0 ? 0 : crossings[at * AZIMUTHS + azimuth];
      const farM = crossings[(at + 1) * AZIMUTHS + azimuth];
      const high = Math.min(free, (topM * topM) / (topM * topM + nearM * nearM));
      const low = baseM > 0 ? (baseM * baseM) / (baseM * baseM + farM * farM) : 0;
      if (high <= low) continue;
      const band = bandCount[azimuth]++ * AZIMUTHS + azimuth;
      bandLow[band] = low;
      bandHigh[band] = high;
      bandDensity[band] = density[crown];
      free = low;
    }
  }
}

/**
 * Looks round from a point and leaves what stands before the sky in `prepared.outlook`. Eye height `heightM` above
 * the ground; what doesn't rise above it is not seen.
 * @returns false where the point lies in a building higher than the eye: nothing of the sky is seen and the outlook
 * is not complete
 */
export function lookRound(
  prepared: PreparedObstacles,
  eastM: number,
  northM: number,
  heightM: number,
): boolean {
  const { outlook, topM, baseM, crown } = prepared;
  outlook.solid.fill(0);
  outlook.bandCount.fill(0);
  for (let thing = 0; thing < topM.length; thing++) {
    const above = topM[thing] - heightM;
    if (above <= 0) continue;
    if (crown[thing] === 1) {
      outlook.crossingCount.fill(0);
      lookAt(prepared, thing, eastM, northM, above);
      addBands(prepared, thing, baseM[thing] - heightM, above);
    } else if (lookAt(prepared, thing, eastM, northM, above)) {
      return false;
    }
  }
  return true;
}
