import type { Spread } from '../../winter/gain-spread.ts';
import { hodgesLehmann } from './hodges-lehmann.ts';
import { pairNoiseC } from './pair-noise.ts';
import type { PairedNight } from './paired-night.ts';
import { stretchOf } from './repeated-nights.ts';

/** Fewer nights of a kind give no offset. */
export const NIGHTS_MIN = 3;
/** From so many nights on the readings' own scatter makes the interval; before it is taken from pairs of stations. */
export const NIGHTS_FOR_OWN_SCATTER = 5;
/** Least scatter of a night, °C: two thermometers read to a whole °F differ by so much from rounding alone. */
const ROUNDING_C = 0.23;
const NORMAL_95 = 1.6449;

/** The offset of a spot on one kind of night, °C. */
export interface KindEstimate {
  readonly nights: number;
  /** Centre with its 90 % interval, widened for nights that repeat each other. */
  readonly spread: Spread;
  /** The same as if every night told something new. */
  readonly unwidened: Spread;
  /** So many nights far apart would tell as much. */
  readonly worthNights: number;
  /** Whether the interval comes from the readings, or, for want of nights, from how much near stations differ. */
  readonly scatter: 'own' | 'assumed';
  /** Further nights as good as these until the interval is half as wide: it shrinks with the root of their number. */
  readonly nightsToHalve: number;
}

/** What the readings say of the spot. `null` where there are fewer than {@link NIGHTS_MIN} nights of a kind. */
export interface OffsetEstimate {
  readonly calm: KindEstimate | null;
  readonly windy: KindEstimate | null;
  /** Nights known on both sides by kind; unclear ones are used for neither offset. */
  readonly nights: { readonly calm: number; readonly windy: number; readonly unclear: number };
}

/** The spot's offset on calm and on windy nights, each from the nights of its kind. */
export function estimateOffset(pairs: readonly PairedNight[]): OffsetEstimate {
  const of = (kind: PairedNight['kind']): PairedNight[] => pairs.filter((pair) => pair.kind === kind);
  const [calm, windy] = [of('calm'), of('windy')];
  return {
    calm: estimateKind(calm, 'calm'),
    windy: estimateKind(windy, 'windy'),
    nights: { calm: calm.length, windy: windy.length, unclear: of('unclear').length },
  };
}

function estimateKind(pairs: readonly PairedNight[], kind: 'calm' | 'windy'): KindEstimate | null {
  const nights = pairs.length;
  if (nights < NIGHTS_MIN) return null;
  const { centre, low, high } = hodgesLehmann(pairs.map((pair) => pair.differenceC));
  const stretch = stretchOf(pairs.map((pair) => pair.day));
  const own = nights >= NIGHTS_FOR_OWN_SCATTER;
  const least = (NORMAL_95 * (own ? ROUNDING_C : pairNoiseC(kind))) / Math.sqrt(nights);
  const [below, above] = [Math.max(own ? centre - low : 0, least), Math.max(own ? high - centre : 0, least)];
  const around = (factor: number): Spread => ({
    lowC: centre - factor * below,
    centreC: centre,
    highC: centre + factor * above,
  });
  return {
    nights,
    spread: around(stretch),
    unwidened: around(1),
    worthNights: nights / (stretch * stretch),
    scatter: own ? 'own' : 'assumed',
    nightsToHalve: 3 * nights,
  };
}
