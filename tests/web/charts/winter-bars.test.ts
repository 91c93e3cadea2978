import { describe, expect, it } from 'vitest';
import { labelCount, winterLabels } from '../../../web/charts/chart-size.ts';
import {
  barForKey,
  barsScale,
  hitRamp,
  isHit,
  levelShare,
  quietMiddle,
  type WinterBar,
} from '../../../web/charts/winter-bars.ts';
import { winterCells, winterSentence } from '../../../web/charts/winter-words.ts';

const bar = (valueC: number | null, complete = true): WinterBar => ({
  winter: 1985,
  complete,
  valueC,
  ...(complete ? {} : { reason: 'January misses 6 nights' }),
});
const context = { thresholdC: -5.5556, hours: 4, unit: 'F', hemisphere: 'north' } as const;
const plain = (text: string): string => text.replace(/[\u202f\u00a0]/g, ' ').replaceAll('\u2212', '-');

describe('bars of winters', () => {
  it('hit at the threshold itself, in hundredths of a degree as the records are kept', () => {
    expect(isHit(bar(-2.2222), -2.22)).toBe(true);
    expect(isHit(bar(-2.22), -2.2222)).toBe(true);
    expect(isHit(bar(-2.21), -2.2222)).toBe(false);
    expect(isHit(bar(null), -2)).toBe(false);
  });
  it('keep threshold and every cold winter inside the drawing, colder lower', () => {
    const scale = barsScale([bar(3), bar(-9), bar(null)], -5);
    expect(levelShare(-9, scale)).toBeLessThan(1);
    expect(levelShare(-5, scale)).toBeLessThan(levelShare(-9, scale));
    expect(levelShare(3, scale)).toBeGreaterThan(0);
    expect(levelShare(40, scale)).toBe(0);
    const unreached = barsScale([bar(4)], -12);
    expect(levelShare(-12, unreached)).toBeLessThan(1);
    expect(barsScale([], -2).topC).toBeGreaterThan(-2);
  });
  it('are darker the farther past the threshold', () => {
    expect([-5.6, -6.6, -9].map((value) => hitRamp(value, -5.5))).toEqual([4, 5, 6]);
  });
  it('are gone through by keys without leaving the record', () => {
    expect(barForKey('ArrowRight', 3, 10)).toBe(4);
    expect(barForKey('ArrowLeft', 0, 10)).toBe(0);
    expect(barForKey('PageUp', 5, 10)).toBe(9);
    expect(barForKey('Home', 5, 10)).toBe(0);
    expect(barForKey('End', 5, 10)).toBe(9);
    expect(barForKey('ArrowLeft', 10, 10)).toBe(9);
    expect(barForKey('a', 5, 10)).toBeNull();
  });
  it('leave the longest quiet stretch for the name of the threshold', () => {
    expect(quietMiddle([true, false, false, false, true, false])).toBe(2);
    expect(quietMiddle([false, false])).toBe(0.5);
    expect(quietMiddle([true, true, true])).toBe(1);
  });
});

describe('words about a winter', () => {
  it('name night, level, hours, kind and distance in the shown unit', () => {
    const night = { date: '1985-01-21', kind: 'calm' } as const;
    expect(plain(winterSentence(bar(-6.6667), night, context))).toBe(
      'Winter 1984–85: 20.0 °F or colder for 4 h, 21 January 1985, calm night. Hit, 2.0 °F past the threshold.',
    );
    expect(plain(winterSentence(bar(-4), undefined, { ...context, unit: 'C', hemisphere: 'south' }))).toBe(
      'Winter 1985: -4.0 °C or colder for 4 h. No hit, 1.6 °C short of the threshold.',
    );
  });
  it('say why a winter is not counted, and when nothing is known', () => {
    expect(winterSentence(bar(-7, false), undefined, context)).toContain(
      'Not complete (January misses 6 nights): listed, not counted.',
    );
    expect(winterSentence(bar(null), undefined, context)).toContain('no night cold enough to be kept');
    expect(winterCells(bar(null), undefined, context)).toMatchObject({ level: '–', hit: '–', night: '–' });
  });
});

describe('labels on axes', () => {
  it('are round winters with room between them', () => {
    expect(winterLabels(1951, 2025, 14)).toEqual([
      1955, 1960, 1965, 1970, 1975, 1980, 1985, 1990, 1995, 2000, 2005, 2010, 2015, 2020, 2025,
    ]);
    expect(winterLabels(1951, 2025, 2.3)).toEqual([1960, 1980, 2000, 2020]);
    expect(labelCount(30, 50)).toBe(2);
  });
});
