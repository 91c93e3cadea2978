import { describe, expect, it } from 'vitest';
import type { AgeShare } from '../../../analysis/answer/life.ts';
import { shareMarks } from '../../../web/charts/share-marks.ts';
import { ageTicks, bandCorners, recordEnd, shareCorners } from '../../../web/charts/survival-curve.ts';

const at = (
  age: number,
  share: number | null,
  low: number | null = null,
  high: number | null = null,
): AgeShare => ({
  ...{
    age,
    followed: 10,
    alive: 5,
    share,
    low,
    high,
    kaplan_meier: share,
    basis: age > 2 ? 'round' : 'record',
  },
  if_threshold: { low: null, high: null },
});
const same = (value: number): number => value;

describe('the survival curve', () => {
  const living = [at(1, 0.8, 0.6, 0.9), at(2, 0.8, 0.6, 0.9), at(3, 0.5, 0.2, 0.7)];

  it('begins with every tree living, is level between winters and falls at them', () => {
    expect(shareCorners(living, same, same)).toEqual([
      [0, 1],
      [1, 1],
      [1, 0.8],
      [2, 0.8],
      [2, 0.8],
      [3, 0.8],
      [3, 0.5],
    ]);
  });

  it('ends where a share is not known', () => {
    expect(shareCorners([at(1, 0.8), at(2, null), at(3, 0.5)], same, same).at(-1)).toEqual([1, 0.8]);
  });

  it('has a band there along the high and back along the low end, none without a range', () => {
    const band = bandCorners(living, same, same);
    expect(band[6]).toEqual([3, 0.7]);
    expect(band[7]).toEqual([3, 0.2]);
    expect(band.at(-1)).toEqual([0, 1]);
    expect(bandCorners([at(1, 0.8)], same, same)).toEqual([]);
  });

  it('knows how far the record reaches and which ages to name', () => {
    expect(recordEnd(living)).toBe(2);
    expect(recordEnd([])).toBe(0);
    expect(ageTicks(30, 20)).toEqual([0, 5, 10, 15, 20, 25, 30]);
    expect(ageTicks(30, 6)).toEqual([0, 10, 20, 30]);
  });
});

describe('the mark of a share', () => {
  it('stands at the share, inside its range', () => {
    expect(shareMarks(0.4, 0.2, 0.6)).toEqual({ range: [0.2, 0.6], point: 0.4, bound: null });
    expect(shareMarks(0.4, null, null)).toEqual({ range: null, point: 0.4, bound: null });
    expect(shareMarks(null, null, null).point).toBeNull();
  });

  it('never stands at certainty once the range is known', () => {
    expect(shareMarks(1, 0.9, 1)).toEqual({ range: [0.9, 1], point: 0.9, bound: 'at least' });
    expect(shareMarks(0, 0, 0.1)).toEqual({ range: [0, 0.1], point: 0.1, bound: 'at most' });
  });
});
