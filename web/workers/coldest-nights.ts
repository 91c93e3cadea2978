import { durationWeights, MISSING_HUNDREDTHS, NIGHT_KINDS } from '../../analysis/records/nights.ts';
import type { WinterTable } from '../../analysis/records/winters.ts';
import { formatIsoDay } from '../../analysis/units/calendar.ts';
import type { ColdestNight } from '../state/ports.ts';

/**
 * The night behind each winter's value without gains: the kind of night with the smallest coldest `S_hours`. Between two
 * kept durations the night is the one of the nearer duration. Winters without a night at or below 10 °C are left out.
 */
export function coldestNights(winters: WinterTable, hours: number): ColdestNight[] {
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
      const level = Math.round(a + weight * (b - a));
      if (level < lowest) [best, lowest] = [kind, level];
    });
    if (best < 0) return;
    const date = formatIsoDay(winters.coldestDay[best][dated][w]);
    nights.push({ winter, date, kind: NIGHT_KINDS[best] });
  });
  return nights;
}
