import { afterEach, describe, expect, it } from 'vitest';

import { sayDate, sayMonth, sayMonthDay } from '../../../analysis/language/dates.ts';
import { sayCount, sayFigure, sayFigureText, sayPercent } from '../../../analysis/language/figures.ts';
import { sayList } from '../../../analysis/language/lists.ts';
import { speak } from '../../../analysis/language/t.ts';

afterEach(() => speak(null));
const inSpanish = (region = 'es'): void => speak(new Map(), region);

describe('figures', () => {
  it('are written as English has them', () => {
    expect([sayFigure(12.25, 1), sayFigure(-0.04, 2), sayFigureText('1234.5')]).toEqual([
      '12.3',
      '-0.04',
      '1234.5',
    ]);
    expect([sayCount(999), sayCount(1234567), sayPercent(34)]).toEqual(['999', '1,234,567', '34%']);
  });

  it('have a decimal comma in Spain and a point in Mexico', () => {
    inSpanish();
    expect([sayFigure(12.25, 1), sayCount(12345), sayCount(1234)]).toEqual(['12,3', '12.345', '1234']);
    expect(sayPercent(34)).toBe('34\u00a0%');
    inSpanish('es-MX');
    expect([sayFigure(12.25, 1), sayCount(12345)]).toEqual(['12.3', '12,345']);
  });

  it('keep the digits they were rounded to', () => {
    // 1.005 is a little less than that in binary, so it is rounded down; a second rounding of the text would not be.
    inSpanish();
    expect(sayFigure(1.005, 2)).toBe('1,00');
  });
});

describe('dates', () => {
  it('are written day first in English', () => {
    expect([sayDate(1989, 12, 23), sayDate(1989, 9, 3, 'short')]).toEqual(['23 December 1989', '3 Sep 1989']);
    expect([sayMonth(5), sayMonth(9, 'short')]).toEqual(['May', 'Sep']);
    expect(sayMonthDay(2, 29)).toBe('29 February');
  });

  it('are written as Spanish writes them', () => {
    inSpanish();
    expect([sayDate(1989, 12, 23), sayMonthDay(11, 21)]).toEqual([
      '23 de diciembre de 1989',
      '21 de noviembre',
    ]);
    expect(sayMonth(1)).toBe('enero');
    expect(sayDate(30, 1, 2)).toBe('2 de enero de 30');
  });
});

describe('lists', () => {
  it('end with and, and with y or e in Spanish', () => {
    expect([sayList([]), sayList(['a']), sayList(['a', 'b']), sayList(['a', 'b', 'c'], 'or')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b or c',
    ]);
    inSpanish();
    expect([sayList(['uvas', 'peras']), sayList(['a', 'peras', 'higos'])]).toEqual([
      'uvas y peras',
      'a, peras e higos',
    ]);
    // Before o- the word is u (Real Academia Española, Diccionario panhispánico de dudas, "o").
    expect([sayList(['uvas', 'peras'], 'or'), sayList(['siete', 'ocho'], 'or')]).toEqual([
      'uvas o peras',
      'siete u ocho',
    ]);
  });
});
