import type { PairedNight } from '../../analysis/spot/thermometer/paired-night.ts';
import type { Spread } from '../../analysis/winter/gain-spread.ts';
import { differenceIn } from '../format/temperatures.ts';
import type { TemperatureUnit } from '../format/unit.ts';

/** One kind of night on the chart: its differences and, where there are enough, the interval of its offset. */
export interface OffsetRow {
  readonly kind: PairedNight['kind'];
  readonly pairs: readonly PairedNight[];
  readonly spread: Spread | null;
}

/** A dot in its row: where along the axis (°C), and how far up from the row's middle, in dots. */
export interface OffsetDot {
  readonly pair: PairedNight;
  readonly step: number;
}

/** Dots that would lie on each other are stacked, alternately above and below; `apartC` is a dot's width, °C. */
export function stackDots(pairs: readonly PairedNight[], apartC: number): OffsetDot[] {
  const columns = new Map<number, number>();
  return [...pairs]
    .sort((a, b) => a.differenceC - b.differenceC)
    .map((pair) => {
      const column = Math.round(pair.differenceC / apartC);
      const count = columns.get(column) ?? 0;
      columns.set(column, count + 1);
      return { pair, step: (count % 2 === 0 ? 1 : -1) * Math.ceil(count / 2) };
    });
}

/** Ends of the axis, °C: all differences and intervals, and 0, with a little room. */
export function offsetExtent(rows: readonly OffsetRow[]): [number, number] {
  const values = rows.flatMap(({ pairs, spread }) => [
    ...pairs.map(({ differenceC }) => differenceC),
    ...(spread ? [spread.lowC, spread.highC] : []),
  ]);
  return [Math.min(0, ...values) - 0.4, Math.max(0, ...values) + 0.4];
}

/** Round marks in the shown unit, each at its place in °C. */
export function offsetTicks(
  [lowC, highC]: readonly [number, number],
  unit: TemperatureUnit,
  count: number,
): { valueC: number; label: string }[] {
  const perC = differenceIn(1, unit);
  const span = (highC - lowC) * perC;
  const step = [1, 2, 5, 10, 20].find((candidate) => span / candidate <= count) ?? 50;
  const ticks: { valueC: number; label: string }[] = [];
  for (let value = Math.ceil((lowC * perC) / step) * step; value <= highC * perC; value += step) {
    const label = value > 0 ? `+${value}` : value < 0 ? `\u2212${-value}` : '0';
    ticks.push({ valueC: value / perC, label });
  }
  return ticks;
}
