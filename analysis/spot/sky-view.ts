import { lookRound } from './look-round.ts';
import { AZIMUTHS, type Outlook, type PreparedObstacles } from './obstacles.ts';

/** Height that the sky is looked at from, m: the middle of a young tree. */
export const EYE_M = 1;

/**
 * Share of the light from one elevation (squared sine `up`) that the crowns of an azimuth let through, 0-1.
 * Crowns behind one another: what the first lets through meets the second.
 */
export function letThrough(outlook: Outlook, azimuth: number, up: number): number {
  const { bandCount, bandLow, bandHigh, bandDensity } = outlook;
  const end = bandCount[azimuth] * AZIMUTHS;
  let through = 1;
  for (let band = azimuth; band < end; band += AZIMUTHS) {
    if (bandLow[band] < up && up < bandHigh[band]) through *= 1 - bandDensity[band];
  }
  return through;
}

/** Share of an azimuth's sky above its solid horizon that the crowns hide; measured in squared sines, 0 to 1 - solid. */
function hiddenByCrowns(outlook: Outlook, azimuth: number): number {
  const { bandCount, bandLow, bandHigh, bandDensity, ends } = outlook;
  const count = bandCount[azimuth];
  const solid = outlook.solid[azimuth];
  if (count === 1) {
    return bandDensity[azimuth] * Math.max(0, bandHigh[azimuth] - Math.max(bandLow[azimuth], solid));
  }
  let used = 0;
  for (let band = azimuth; band < count * AZIMUTHS; band += AZIMUTHS) {
    for (let side = 0; side < 2; side++) {
      const end = Math.max(solid, side === 0 ? bandLow[band] : bandHigh[band]);
      let at = used++;
      for (; at > 0 && ends[at - 1] > end; at--) ends[at] = ends[at - 1];
      ends[at] = end;
    }
  }
  let hidden = 0;
  for (let at = 1; at < used; at++) {
    const width = ends[at] - ends[at - 1];
    if (width > 0) hidden += width * (1 - letThrough(outlook, azimuth, (ends[at] + ends[at - 1]) / 2));
  }
  return hidden;
}

/**
 * Share of the sky hidden at a point, 0 (open) to 1, as a horizontal surface feels it: each part of the sky weighted
 * by the sine of its elevation, so that what is hidden up to elevation b all round comes to sin²b. The sky-view factor
 * (Oke 1987, Boundary Layer Climates) is 1 minus it. In a building it is 1, in the line of a wall one half.
 * @param heightM height of the eye above the ground, m
 */
export function skyHiddenAt(
  prepared: PreparedObstacles,
  eastM: number,
  northM: number,
  heightM = EYE_M,
): number {
  if (!lookRound(prepared, eastM, northM, heightM)) return 1;
  const { outlook } = prepared;
  let hidden = 0;
  for (let azimuth = 0; azimuth < AZIMUTHS; azimuth++) {
    hidden += outlook.solid[azimuth];
    if (outlook.bandCount[azimuth] > 0) hidden += hiddenByCrowns(outlook, azimuth);
  }
  return hidden / AZIMUTHS;
}
