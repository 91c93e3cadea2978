import { InputError } from '../records/input-error.ts';
import type { LevelGainSpreads } from '../tree/level-gains.ts';
import { byLevel, type Level } from '../tree/levels.ts';
import { NO_GAIN_SPREAD, spreadOfF, type GainSpread, type Spread } from '../winter/gain-spread.ts';
import { CALM_CAP_C, WINDY_CAP_C } from './gain-caps.ts';
import { findMeasure, gainNow, type Measure } from './measures.ts';
import { countingIds, refusals, type Planted } from './refusals.ts';

/** "Lights plus frost cloth": 7 to 8 °F calm, 3 to 4 °F windy (S50). The sum of the two rows would be more. */
const LIGHTS_UNDER_CLOTH: GainSpread = { calm: spreadOfF([7, 7.5, 8]), windy: spreadOfF([3, 3.5, 4]) };

/** What a choice gains, in the two parts that a spot's own gain joins differently. */
export interface CoverParts {
  /** Degrees added to the air at the tree, capped: a spot's gain is added to them and the same caps applied again. */
  readonly air: LevelGainSpreads;
  /** Degrees of what holds by its own warmth (bank, wet trunk, garage): the larger of it and the air's sum counts. */
  readonly alone: LevelGainSpreads;
}

/**
 * Gains of a choice of covers, °C, by the handbook's adding rule: the largest single cover, plus lights, plus soil, at most
 * 10 °F on calm and 5 °F on windy nights. A low sprinkler is one of the covers, a trunk wrap one at kill only; of watered and
 * bare soil the larger counts; lights and cover together are held to what was measured of both. Covers that can be
 * tied gain nothing in wind unless `tied`. What stands alone (soil bank, wet trunk, garage) counts by its row where it is the larger.
 *
 * Spreads are added end by end, low to low and high to high: what makes one measure fall short (a gap, a bad night)
 * makes the others fall short too, so errors aren't taken to cancel.
 * @throws InputError for an unknown id or a refused combination
 */
export function coverGains(ids: readonly string[], tree?: Planted): LevelGainSpreads {
  const [refusal] = refusals(ids, tree);
  if (refusal) throw new InputError(`Covers ${ids.join(', ')}: ${refusal}`);
  const { air, alone } = coverParts(ids, tree);
  return byLevel((level) => largest([air[level], alone[level]]));
}

/** The same in its two parts, of what still counts where something is refused. @throws InputError for an unknown id */
export function coverParts(ids: readonly string[], tree?: Planted): CoverParts {
  const counting = countingIds(ids, tree);
  const tied = counting.includes('tied');
  const chosen = counting.flatMap((id) => findMeasure(id) ?? []);
  const alone = chosen.filter(({ standsAlone }) => standsAlone);
  const air = chosen.filter(({ standsAlone }) => !standsAlone);
  return {
    air: byLevel((level) => airGain(air, level, tied)),
    alone: byLevel((level) => largest(alone.map(({ gain }) => gain[level]))),
  };
}

function airGain(chosen: readonly Measure[], level: Level, tied: boolean): GainSpread {
  const inGroup = (...groups: readonly Measure['group'][]): GainSpread =>
    largest(
      chosen.filter(({ group }) => groups.includes(group)).map((measure) => gainNow(measure, level, tied)),
    );
  const cover = inGroup('cover', 'trunk', 'water');
  const lights = inGroup('lights');
  const lit = largest([cover, smallest(add(cover, lights), LIGHTS_UNDER_CLOTH)]);
  return smallest(add(lit, inGroup('soil')), CAPS);
}

const CAPS: GainSpread = {
  calm: { lowC: CALM_CAP_C, centreC: CALM_CAP_C, highC: CALM_CAP_C },
  windy: { lowC: WINDY_CAP_C, centreC: WINDY_CAP_C, highC: WINDY_CAP_C },
};

function largest(gains: readonly GainSpread[]): GainSpread {
  return gains.reduce((a, b) => combine(a, b, Math.max), NO_GAIN_SPREAD);
}

function smallest(a: GainSpread, b: GainSpread): GainSpread {
  return combine(a, b, Math.min);
}

function add(a: GainSpread, b: GainSpread): GainSpread {
  return combine(a, b, (x, y) => x + y);
}

function combine(a: GainSpread, b: GainSpread, by: (x: number, y: number) => number): GainSpread {
  const ends = (x: Spread, y: Spread): Spread => ({
    lowC: by(x.lowC, y.lowC),
    centreC: by(x.centreC, y.centreC),
    highC: by(x.highC, y.highC),
  });
  return { calm: ends(a.calm, b.calm), windy: ends(a.windy, b.windy) };
}
