import type { PlanPoint, Yard } from './yard.ts';

/**
 * A hollow's or rise's share of its depth at a distance from its middle: 1 there, 0 at its radius and beyond, smooth
 * at both; half of the depth at half of the radius. The drawing gives no more than depth and radius, so the shape is
 * a design choice.
 */
function bell(distanceM: number, radiusM: number): number {
  return distanceM >= radiusM ? 0 : (1 + Math.cos((Math.PI * distanceM) / radiusM)) / 2;
}

/**
 * Height of the ground at a point, m, against the plane's height in the middle of the plot: even slope plus hollows and
 * rises. Where a flat plot has neither it is 0; the ground left alone by hollows and rises is the open level.
 */
export function relativeHeightM(
  yard: Pick<Yard, 'widthM' | 'depthM' | 'slope' | 'things'>,
  point: PlanPoint,
): number {
  const [eastM, northM] = point;
  let heightM = 0;
  if (yard.slope !== null) {
    const towards = (yard.slope.towardsDeg * Math.PI) / 180;
    const downhillM =
      (eastM - yard.widthM / 2) * Math.sin(towards) + (northM - yard.depthM / 2) * Math.cos(towards);
    heightM -= (downhillM * yard.slope.percent) / 100;
  }
  for (const thing of yard.things) {
    if (thing.kind !== 'hollow' && thing.kind !== 'rise') continue;
    const byM = thing.byM * bell(Math.hypot(eastM - thing.at[0], northM - thing.at[1]), thing.radiusM);
    heightM += thing.kind === 'rise' ? byM : -byM;
  }
  return heightM;
}
