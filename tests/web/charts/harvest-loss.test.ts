import { describe, expect, it } from 'vitest';
import {
  chanceStep,
  figureBaselinePx,
  labelledHalves,
  lossTicks,
  lossTop,
  pickLineEndPx,
  placeInHalves,
  type HarvestHalf,
} from '../../../web/charts/harvest-loss.ts';

const half = (from: string, to: string, lost: number): HarvestHalf => ({
  from,
  to,
  lost,
  low: lost / 2,
  high: Math.min(1, lost * 1.5),
});
const HALVES = [
  half('11-01', '11-15', 0.02),
  half('11-16', '11-30', 0.1),
  half('12-01', '12-15', 0.2),
  half('12-16', '12-31', 0.44),
];

describe('loss of the crop by half-month', () => {
  it('shades by the same steps as the freeze bands', () => {
    expect([0.05, 0.1, 0.25, 0.5, 0.75, 0.9].map(chanceStep)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('has an axis that holds every range and never ends below a fifth or above all', () => {
    expect(lossTop(HALVES)).toBe(0.8);
    expect(lossTop([half('11-01', '11-15', 0.01)])).toBe(0.2);
    expect(lossTop([half('11-01', '11-15', 0.97)])).toBe(1);
    for (const top of [0.2, 0.4, 0.6, 0.8, 1]) expect(lossTicks(top).every((tick) => tick <= top)).toBe(true);
  });

  it('finds a date within its half, counted through its last day', () => {
    expect(placeInHalves('11-15', HALVES)).toBe(1);
    expect(placeInHalves('12-08', HALVES)).toBeCloseTo(2 + 8 / 15);
    expect(placeInHalves('10-31', HALVES)).toBeNull();
  });

  it('labels the last half always, and all where there is room', () => {
    expect(labelledHalves(6, 60).size).toBe(6);
    const few = labelledHalves(14, 14);
    expect(few.has(13)).toBe(true);
    expect(few.size).toBeLessThan(7);
  });

  it('lifts a figure over the line of the limit, and leaves others right over their mark', () => {
    expect(figureBaselinePx(100, 160)).toBe(95);
    expect(figureBaselinePx(100, 40)).toBe(95);
    for (const limit of [86, 90, 95, 97]) expect(figureBaselinePx(100, limit)).toBe(limit - 4);
  });

  it('runs the line of a day to the ground, but never through a figure or a range', () => {
    const mark = (middlePx: number, labelled = true) => ({ middlePx, baselinePx: 120, labelled });
    expect(pickLineEndPx(70, [mark(36), mark(108)], 170)).toBe(170);
    expect(pickLineEndPx(100, [mark(36), mark(108)], 170)).toBeLessThan(120 - 10);
    expect(pickLineEndPx(100, [mark(108, false)], 170)).toBe(170);
    expect(pickLineEndPx(105, [mark(108, false)], 170)).toBeLessThan(120);
    // Where half months stand close, both neighbours of their border count.
    expect(pickLineEndPx(50, [mark(40), { ...mark(60), baselinePx: 60 }], 170)).toBeLessThan(50);
  });
});
