import type { GainSpread, Spread } from '../winter/gain-spread.ts';
import { combine, type KindWeights } from './combine.ts';
import { MECHANISM_IDS, type MechanismId } from './mechanism.ts';
import { prepareYard, type PreparedYard } from './prepare-yard.ts';
import { findShares, SLOT } from './spot-shares.ts';
import { scaledSpread } from './spreads.ts';
import { whyAt } from './why.ts';
import type { PlanPoint } from './yard.ts';

export { prepareYard, type PreparedYard };

/** What one mechanism adds at a spot, and a plain sentence on what brings it about. */
export interface SpotMechanism {
  readonly id: MechanismId;
  readonly gain: GainSpread;
  readonly why: string;
}

/** Degrees against the open station at tree height. */
export interface SpotOffset {
  readonly gain: GainSpread;
  /** Those that count and bring at least 0.03 °C on either kind of night, largest first; before cap and floor. */
  readonly mechanisms: readonly SpotMechanism[];
  /** Whether cap or floor holds the sum, by kind of night. */
  readonly held: { readonly calm: boolean; readonly windy: boolean };
}

const LEAST_NAMED_C = 0.03;

/** The offset at a point of the plan, also outside the plot. */
export function offsetAt(prepared: PreparedYard, [eastM, northM]: PlanPoint): SpotOffset {
  const { calm, windy, coefficients } = prepared;
  const shares = findShares(prepared, eastM, northM);
  combine(calm, shares.calm, shares.overhead[0]);
  combine(windy, shares.windy, shares.overhead[0]);
  const mechanisms = MECHANISM_IDS.map((id): SpotMechanism => {
    const { gain } = coefficients[id];
    return {
      id,
      gain: {
        calm: scaledSpread(gain.calm, calm.counted[SLOT[id]]),
        windy: scaledSpread(gain.windy, windy.counted[SLOT[id]]),
      },
      why: '',
    };
  })
    .filter(({ gain }) => sizeC(gain) >= LEAST_NAMED_C)
    .sort((a, b) => sizeC(b.gain) - sizeC(a.gain))
    .map((mechanism) => ({ ...mechanism, why: whyAt(prepared, mechanism.id, [eastM, northM]) }));
  return {
    gain: { calm: totalOf(calm), windy: totalOf(windy) },
    mechanisms,
    held: { calm: calm.total[3] === 1, windy: windy.total[3] === 1 },
  };
}

function totalOf({ total: [lowC, centreC, highC] }: KindWeights): Spread {
  return { lowC, centreC, highC };
}

function sizeC({ calm, windy }: GainSpread): number {
  return Math.max(Math.abs(calm.centreC), Math.abs(windy.centreC));
}
