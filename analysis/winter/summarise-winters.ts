import {
  KEPT_NIGHT_MAX_C,
  MISSING_HUNDREDTHS,
  NIGHT_KINDS,
  SUSTAINED_COUNT,
  SUSTAINED_HOURS,
  type NightTable,
} from '../records/nights.ts';
import type { WinterTable } from '../records/winters.ts';
import { KnownNights } from './known-nights.ts';
import { judgeCompleteness } from './completeness.ts';
import { winterBounds, winterOf, type Hemisphere } from './winter-year.ts';

const KEPT_MAX = KEPT_NIGHT_MAX_C * 100;

/**
 * The winters of one station: per winter and kind of night the coldest sustained cold for every duration with its night,
 * from all nights with a minimum at or below 10 °C, and whether the winter is complete as far as the station alone shows
 * (`judgeCompleteness` adds what the neighbours show).
 */
export function summariseWinters(nights: NightTable, hemisphere: Hemisphere): WinterTable {
  const first = winterOf(nights.firstNight, hemisphere);
  const last = nights.count === 0 ? first - 1 : winterOf(nights.firstNight + nights.count - 1, hemisphere);
  const count = last - first + 1;
  const coldest = NIGHT_KINDS.map(() =>
    SUSTAINED_HOURS.map(() => new Int16Array(count).fill(MISSING_HUNDREDTHS)),
  );
  const coldestDay = NIGHT_KINDS.map(() => SUSTAINED_HOURS.map(() => new Int32Array(count)));
  for (let w = 0; w < count; w++) {
    const bounds = winterBounds(first + w, hemisphere);
    const from = Math.max(0, bounds.first - nights.firstNight);
    const to = Math.min(nights.count - 1, bounds.last - nights.firstNight);
    for (let i = from; i <= to; i++) {
      const minimum = nights.sustained[0][i];
      if (minimum === MISSING_HUNDREDTHS || minimum > KEPT_MAX) continue;
      const kind = nights.kind[i];
      for (let j = 0; j < SUSTAINED_COUNT; j++) {
        const level = nights.sustained[j][i];
        if (level === MISSING_HUNDREDTHS) continue;
        const best = coldest[kind][j][w];
        if (best === MISSING_HUNDREDTHS || level < best) {
          coldest[kind][j][w] = level;
          coldestDay[kind][j][w] = nights.firstNight + i;
        }
      }
    }
  }
  const winter = Int16Array.from({ length: count }, (_, w) => first + w);
  return { winter, coldest, coldestDay, ...judgeCompleteness(winter, hemisphere, new KnownNights(nights)) };
}
