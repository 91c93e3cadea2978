import type { MechanismId } from './mechanism.ts';
import { distanceToOutlines } from './mechanisms/areas.ts';
import { dammedDepthM } from './mechanisms/cold-air.ts';
import { lookAlong } from './mechanisms/upright-rays.ts';
import { reach } from './mechanisms/wall-warmth.ts';
import type { PreparedYard } from './prepare-yard.ts';
import { relativeHeightM } from './relief.ts';
import { distanceToSides } from './segments.ts';
import { sideName } from './side-name.ts';
import { SLOT } from './spot-shares.ts';
import type { PlanPoint } from './yard.ts';

const BARRIERS = { building: 'building', wall: 'wall or fence', windbreak: 'windbreak' };

/** Why a mechanism counts at a point: a few plain words without a full stop. Speaks of the point looked at last. */
export function whyAt(yard: PreparedYard, id: MechanismId, at: PlanPoint): string {
  const [eastM, northM] = at;
  switch (id) {
    case 'warm-wall':
      return wall(yard, yard.faces.stored, at, 'sun-warmed ');
    case 'heated-wall':
      return wall(yard, yard.faces.heating, at, '');
    case 'wind-shelter':
      return shelter(yard, at);
    case 'sky-hidden':
      return sky(yard);
    case 'paving':
      return onOrNear(distanceToOutlines(yard.areas.paving.outlines, eastM, northM), 'paving');
    case 'bare-ground':
      return onOrNear(distanceToOutlines(yard.areas.bare.outlines, eastM, northM), 'bare ground');
    case 'mulch-or-tall-grass':
      return onOrNear(distanceToOutlines(yard.areas.covered.outlines, eastM, northM), 'mulch or tall grass');
    case 'pond':
      return onOrNear(distanceToOutlines(yard.areas.ponds.outlines, eastM, northM), 'the pond');
    case 'big-water':
      return bigWater(yard);
    case 'cold-air':
      return coldAir(yard, at);
    case 'slope':
      return hillside(yard);
  }
}

function metres(distanceM: number): string {
  return `${distanceM.toFixed(1)} m`;
}

function onOrNear(distanceM: number, what: string): string {
  return distanceM === 0 ? `on ${what}` : `${metres(distanceM)} from ${what}`;
}

function wall(
  { faces }: PreparedYard,
  strength: Float64Array,
  [eastM, northM]: PlanPoint,
  warmed: string,
): string {
  let best = 0;
  let most = -1;
  for (let face = 0; face < strength.length; face++) {
    const gained = strength[face] * reach(faces, face, eastM, northM);
    if (gained > most) [best, most] = [face, gained];
  }
  const distanceM = distanceToSides(faces.segments, eastM, northM, best, best + 1);
  const side = sideName((Math.atan2(faces.outEast[best], faces.outNorth[best]) * 180) / Math.PI);
  const { building, heated } = faces.owners[best];
  const owner = building
    ? `wall of the ${heated ? 'heated house' : 'unheated building'}`
    : 'side of the masonry wall';
  return `${metres(distanceM)} from the ${warmed}${side} ${owner}`;
}

/** Where a wall's warmth counts, the sky that the wall hides does not. */
function sky({ calm, shares: { calm: shares, overhead } }: PreparedYard): string {
  const all = calm.counted[SLOT['sky-hidden']] === shares[SLOT['sky-hidden']];
  const percent = Math.round(overhead[all ? 2 : 1] * 100);
  return all ? `${percent} % of the sky is hidden` : `crowns or roofs hide ${percent} % of the sky`;
}

function shelter({ wind, yard }: PreparedYard, [eastM, northM]: PlanPoint): string {
  let nearest = Infinity;
  let what = '';
  for (let ray = 0; ray < wind.rays; ray++) {
    lookAlong(wind, ray, eastM, northM);
    for (let side = 0; side < wind.sides; side++) {
      if (wind.filled[side] === 0 || wind.distanceM[side] >= nearest) continue;
      nearest = wind.distanceM[side];
      what = BARRIERS[wind.kinds[side]];
    }
  }
  return `out of the cold ${sideName(yard.coldWindFromDeg)} wind, ${metres(nearest)} behind a ${what}`;
}

function bigWater({ yard: { bigWater: water } }: PreparedYard): string {
  if (!water) return '';
  const far =
    water.distanceM < 950 ? `${Math.round(water.distanceM)} m` : `${(water.distanceM / 1000).toFixed(1)} km`;
  return `${water.kind === 'sea' ? 'the sea' : 'a big lake'} ${far} to the ${sideName(water.bearingDeg)}`;
}

function coldAir({ yard, air }: PreparedYard, at: PlanPoint): string {
  const heightM = relativeHeightM(yard, at);
  const dammedM = dammedDepthM(air, at[0], at[1]);
  const ground =
    Math.abs(heightM) < 0.05
      ? 'level with the open ground'
      : `${metres(Math.abs(heightM))} ${heightM < 0 ? 'below' : 'above'} the open ground`;
  if (dammedM >= 0.05) return `${ground}, cold air ${metres(dammedM)} deep behind what dams it downhill`;
  return heightM < 0 ? `${ground}, where cold air collects` : `${ground}, cold air drains away`;
}

function hillside({ yard: { slope } }: PreparedYard): string {
  if (!slope) return '';
  const where = slope.position === 'crest' ? 'on the crest of' : 'in the middle of';
  return `${where} a hillside that falls ${Number(slope.percent.toFixed(1))} m in 100 m to the ${sideName(slope.towardsDeg)}`;
}
