import { CALM_CAP_C, WINDY_CAP_C } from '../cover/gain-caps.ts';
import type { GainSpread, Spread } from '../winter/gain-spread.ts';

/** What spot and cover may add together, °C: no more than a cover alone. */
export const JOINT_CAP = { calmC: CALM_CAP_C, windyC: WINDY_CAP_C } as const;

/**
 * A spot and a cover on the same tree: their centres add, their distances to the ends add as squares since neither knows of
 * the other, and nothing goes above the joint cap. A spot measured warmer than the cap stays what it was measured.
 */
export function jointGain(spot: GainSpread, cover: GainSpread): GainSpread {
  return {
    calm: jointSpread(spot.calm, cover.calm, JOINT_CAP.calmC),
    windy: jointSpread(spot.windy, cover.windy, JOINT_CAP.windyC),
  };
}

/** True where the cap takes something off the centre of the sum. */
export function isCapped(spot: GainSpread, cover: GainSpread): boolean {
  const { calm, windy } = jointGain(spot, cover);
  const lost = (sum: Spread, a: Spread, b: Spread): boolean => sum.centreC < a.centreC + b.centreC - 1e-9;
  return lost(calm, spot.calm, cover.calm) || lost(windy, spot.windy, cover.windy);
}

/**
 * What holds by its own warmth (a bank round the graft, a garage) whatever the air of the yard: the larger of it and the
 * air's gain counts, end by end; where there is nothing of the kind (0) the air's. Its own row may say more than the joint
 * cap (a garage 8 °F in wind): the cap holds for it too, which is the colder answer.
 */
export function orAlone(air: GainSpread, alone: GainSpread): GainSpread {
  const larger = (x: Spread, y: Spread, capC: number): Spread =>
    y.highC > 0
      ? {
          lowC: Math.max(x.lowC, Math.min(y.lowC, capC)),
          centreC: Math.max(x.centreC, Math.min(y.centreC, capC)),
          highC: Math.max(x.highC, Math.min(y.highC, capC)),
        }
      : x;
  return {
    calm: larger(air.calm, alone.calm, JOINT_CAP.calmC),
    windy: larger(air.windy, alone.windy, JOINT_CAP.windyC),
  };
}

function jointSpread(a: Spread, b: Spread, capC: number): Spread {
  const centre = a.centreC + b.centreC;
  const below = Math.hypot(a.centreC - a.lowC, b.centreC - b.lowC);
  const above = Math.hypot(a.highC - a.centreC, b.highC - b.centreC);
  const capped = (value: number, own: number): number => Math.min(value, Math.max(capC, own));
  return {
    lowC: capped(centre - below, a.lowC),
    centreC: capped(centre, a.centreC),
    highC: capped(centre + above, a.highC),
  };
}
