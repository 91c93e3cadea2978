import { sayFigure, sayFigureText } from '../language/figures.ts';
import { t } from '../language/t.ts';
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

const BARRIERS = { building: t`a building`, wall: t`a wall or fence`, windbreak: t`a windbreak` };

/** Why a mechanism counts at a point: a few plain words without a full stop. Speaks of the point looked at last. */
export function whyAt(yard: PreparedYard, id: MechanismId, at: PlanPoint): string {
  const [eastM, northM] = at;
  switch (id) {
    case 'warm-wall':
      return wall(yard, yard.faces.stored, at, true);
    case 'heated-wall':
      return wall(yard, yard.faces.heating, at, false);
    case 'wind-shelter':
      return shelter(yard, at);
    case 'sky-hidden':
      return sky(yard);
    case 'paving':
      return onOrNear(distanceToOutlines(yard.areas.paving.outlines, eastM, northM), 'paving');
    case 'bare-ground':
      return onOrNear(distanceToOutlines(yard.areas.bare.outlines, eastM, northM), 'bare');
    case 'mulch-or-tall-grass':
      return onOrNear(distanceToOutlines(yard.areas.covered.outlines, eastM, northM), 'covered');
    case 'pond':
      return onOrNear(distanceToOutlines(yard.areas.ponds.outlines, eastM, northM), 'pond');
    case 'big-water':
      return bigWater(yard);
    case 'cold-air':
      return coldAir(yard, at);
    case 'slope':
      return hillside(yard);
  }
}

/** The wall that `whyAt` tells of as warmed by the sun, as it tells of one that is heated. */
export function warmWallPlainly(yard: PreparedYard, at: PlanPoint): string {
  return wall(yard, yard.faces.stored, at, false);
}

function metres(distanceM: number): string {
  return `${sayFigure(distanceM, 1)} m`;
}

function onOrNear(distanceM: number, what: 'paving' | 'bare' | 'covered' | 'pond'): string {
  const far = metres(distanceM);
  const isOn = distanceM === 0;
  switch (what) {
    case 'paving':
      return isOn ? t`on paving` : t`${far} from paving`;
    case 'bare':
      return isOn ? t`on bare ground` : t`${far} from bare ground`;
    case 'covered':
      return isOn ? t`on mulch or tall grass` : t`${far} from mulch or tall grass`;
    case 'pond':
      return isOn ? t`on the pond` : t`${far} from the pond`;
  }
}

function wall(
  { faces }: PreparedYard,
  strength: Float64Array,
  [eastM, northM]: PlanPoint,
  isWarmed: boolean,
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
  const far = metres(distanceM);
  if (!building)
    return isWarmed
      ? t`${far} from the sun-warmed ${side} side of the masonry wall`
      : t`${far} from the ${side} side of the masonry wall`;
  if (heated)
    return isWarmed
      ? t`${far} from the sun-warmed ${side} wall of the heated house`
      : t`${far} from the ${side} wall of the heated house`;
  return isWarmed
    ? t`${far} from the sun-warmed ${side} wall of the unheated building`
    : t`${far} from the ${side} wall of the unheated building`;
}

/** Where a wall's warmth counts, the sky that the wall hides does not. */
function sky({ calm, shares: { calm: shares, overhead } }: PreparedYard): string {
  const all = calm.counted[SLOT['sky-hidden']] === shares[SLOT['sky-hidden']];
  const percent = Math.round(overhead[all ? 2 : 1] * 100);
  return all ? t`${percent} % of the sky is hidden` : t`crowns or roofs hide ${percent} % of the sky`;
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
  return t`out of the cold ${sideName(yard.coldWindFromDeg)} wind, ${metres(nearest)} behind ${what}`;
}

function bigWater({ yard: { bigWater: water } }: PreparedYard): string {
  if (!water) return '';
  const far =
    water.distanceM < 950 ? `${Math.round(water.distanceM)} m` : `${sayFigure(water.distanceM / 1000, 1)} km`;
  const side = sideName(water.bearingDeg);
  return water.kind === 'sea' ? t`the sea ${far} to the ${side}` : t`a big lake ${far} to the ${side}`;
}

function coldAir({ yard, air }: PreparedYard, at: PlanPoint): string {
  const heightM = relativeHeightM(yard, at);
  const dammedM = dammedDepthM(air, at[0], at[1]);
  const away = metres(Math.abs(heightM));
  const ground =
    Math.abs(heightM) < 0.05
      ? t`level with the open ground`
      : heightM < 0
        ? t`${away} below the open ground`
        : t`${away} above the open ground`;
  if (dammedM >= 0.05) return t`${ground}, cold air ${metres(dammedM)} deep behind what dams it downhill`;
  return heightM < 0 ? t`${ground}, where cold air collects` : t`${ground}, cold air drains away`;
}

function hillside({ yard: { slope } }: PreparedYard): string {
  if (!slope) return '';
  const fall = sayFigureText(String(Number(slope.percent.toFixed(1))));
  const side = sideName(slope.towardsDeg);
  return slope.position === 'crest'
    ? t`on the crest of a hillside that falls ${fall} m in 100 m to the ${side}`
    : t`in the middle of a hillside that falls ${fall} m in 100 m to the ${side}`;
}
