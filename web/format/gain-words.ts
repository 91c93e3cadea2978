import type { LevelAnswer } from '../../analysis/answer/assessment.ts';
import { t } from '../../analysis/language/t.ts';
import { formatHeadline } from './periods.ts';
import { differenceIn, figure, formatDifference } from './temperatures.ts';
import type { TemperatureUnit } from './unit.ts';

/** True where a spot or a cover has a part in the answer. */
export function hasGain({ gain_calm_c, gain_windy_c, if_gain: { low, high } }: LevelAnswer): boolean {
  return [{ gain_calm_c, gain_windy_c }, low, high].some(
    (end) => end.gain_calm_c !== 0 || end.gain_windy_c !== 0,
  );
}

/** `+6.8 °F (5 to 8.1) on calm and +1.5 °F (1 to 2) on windy nights`. */
export function gainWords(level: LevelAnswer, unit: TemperatureUnit): string {
  const { low, high } = level.if_gain;
  const range = (lowC: number, highC: number): string => {
    const [a, b] = [lowC, highC].map((gain) => figure(differenceIn(gain, unit), 1));
    return a === b ? '' : ` (${t`${a} to ${b}`})`;
  };
  const calm = formatDifference(level.gain_calm_c, unit) + range(low.gain_calm_c, high.gain_calm_c);
  const windy = formatDifference(level.gain_windy_c, unit) + range(low.gain_windy_c, high.gain_windy_c);
  return t`${calm} on calm and ${windy} on windy nights`;
}

/** The answer at both ends of the gain: `at the low end about 1 winter in 9, at the high end about 1 winter in 40`. */
export function gainEndWords({ if_gain: { low, high }, counted: { winters } }: LevelAnswer): string {
  const [least, most] = [low, high].map((end) => formatHeadline(end.headline, winters));
  return least === most ? '' : t`at the low end ${least}, at the high end ${most}`;
}
