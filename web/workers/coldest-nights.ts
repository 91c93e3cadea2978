import { durationWeights, MISSING_HUNDREDTHS, NIGHT_KINDS } from '../../analysis/records/nights.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { formatIsoDay } from '../../analysis/units/calendar.ts';
import { toHundredths } from '../../analysis/units/temperature.ts';
import { gainsByKindC, type Gains } from '../../analysis/winter/winter-minima.ts';
import type { ColdestNight } from '../state/ports.ts';

/**
 * The night behind each winter's value: the kind of night with the smallest coldest `S_hours` + gain. Between two
 * kept durations the night is the one of the nearer duration. Winters without a night at or below 10 °C are left out.
 */
export function coldestNights(winters: WinterTable, hours: number, gains: Gains): ColdestNight[] {
  const gainOf = gainsByKindC(gains).map(toHundredths);
  const { lower, weight } = durationWeights(hours);
  const upper = weight === 0 ? lower : lower + 1;
  const dated = weight > 0.5 ? upper : lower;
  const nights: ColdestNight[] = [];
  winters.winter.forEach((winter, w) => {
    let best = -1;
    let lowest = Infinity;
    NIGHT_KINDS.forEach((_, kind) => {
      const [a, b] = [winters.coldest[kind][lower][w], winters.coldest[kind][upper][w]];
      if (a === MISSING_HUNDREDTHS || b === MISSING_HUNDREDTHS) return;
      const level = Math.round(a + weight * (b - a)) + gainOf[kind];
      if (level < lowest) [best, lowest] = [kind, level];
    });
    if (best < 0) return;
    const date = formatIsoDay(winters.coldestDay[best][dated][w]);
    nights.push({ winter, date, kind: NIGHT_KINDS[best] });
  });
  return nights;
}
