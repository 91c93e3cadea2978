import type { NightKind } from '../../analysis/records/nights.ts';
import { toHundredths } from '../../analysis/units/temperature.ts';

/** One winter as `WinterBars` shows it. */
export interface WinterBar {
  readonly winter: number;
  readonly complete: boolean;
  /** Coldest sustained cold of the winter for the chosen hours, gains included, °C; `null`: no such night known. */
  readonly valueC: number | null;
  /** Why the winter isn't complete. */
  readonly reason?: string;
}

/** The night behind a winter's value. */
export interface WinterNight {
  /** `YYYY-MM-DD` of its morning. */
  readonly date: string;
  readonly kind: NightKind;
}

export interface BarsScale {
  /** Level at the upper edge, from which the bars hang, °C. */
  readonly topC: number;
  /** Level at the lower edge, °C. */
  readonly bottomC: number;
}

/** Bars never start warmer than this far above the threshold, so that mild winters don't flatten the cold ones, °C. */
const HEADROOM_C = 14;

/** Levels at the edges: room above the threshold, all winters and the threshold inside below. */
export function barsScale(bars: readonly WinterBar[], thresholdC: number): BarsScale {
  const values = bars.flatMap(({ valueC }) => (valueC === null ? [] : [valueC]));
  const warmest = Math.max(thresholdC + 2, ...values);
  const coldest = Math.min(thresholdC, ...values);
  return { topC: Math.min(warmest + 1, thresholdC + HEADROOM_C), bottomC: coldest - 1.5 };
}

/** Whether the winter's value reaches the threshold, at the grain in which the records are kept. */
export function isHit(bar: WinterBar, thresholdC: number): boolean {
  return bar.valueC !== null && toHundredths(bar.valueC) <= toHundredths(thresholdC);
}

/** Share 0-1 of the height at which a level lies, clamped to the edges. */
export function levelShare(levelC: number, { topC, bottomC }: BarsScale): number {
  return Math.min(1, Math.max(0, (topC - levelC) / (topC - bottomC)));
}

/** Step of the cold ramp for a hit: deeper below the threshold, deeper in colour. */
export function hitRamp(valueC: number, thresholdC: number): 4 | 5 | 6 {
  const below = thresholdC - valueC;
  return below >= 3 ? 6 : below >= 1 ? 5 : 4;
}

/** The winter reached from index `from` by an arrow, page or end key; `null` for other keys. */
export function barForKey(key: string, from: number, count: number): number | null {
  const target = {
    ArrowLeft: from - 1,
    ArrowDown: from - 1,
    ArrowRight: from + 1,
    ArrowUp: from + 1,
    PageDown: from - 10,
    PageUp: from + 10,
    Home: 0,
    End: count - 1,
  }[key];
  return target === undefined ? null : Math.min(count - 1, Math.max(0, target));
}

/** Middle of the longest run of winters without a hit, as an index (may lie between two): room for the threshold's name. */
export function quietMiddle(hits: readonly boolean[]): number {
  let [bestFrom, bestLength, from] = [0, 0, 0];
  for (let i = 0; i <= hits.length; i++) {
    if (i < hits.length && !hits[i]) continue;
    if (i - from > bestLength) [bestFrom, bestLength] = [from, i - from];
    from = i + 1;
  }
  return bestLength === 0 ? (hits.length - 1) / 2 : bestFrom + (bestLength - 1) / 2;
}
