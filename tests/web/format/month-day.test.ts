import { describe, expect, it } from 'vitest';
import { formatMonthDay, formatMonthDays } from '../../../web/format/month-day.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('dates of every year', () => {
  it('writes day and month, and knows 29 February', () => {
    expect(plain(formatMonthDay('11-21'))).toBe('21 Nov');
    expect(plain(formatMonthDay('02-29', 'long'))).toBe('29 February');
    expect(formatMonthDay(null)).toBe('–');
  });

  it('says the month of a span once where it is the same', () => {
    expect(plain(formatMonthDays('11-14', '11-29'))).toBe('14 to 29 Nov');
    expect(plain(formatMonthDays('12-28', '01-03'))).toBe('28 Dec to 3 Jan');
    expect(plain(formatMonthDays('12-28', '12-28', 'long'))).toBe('28 December');
  });
});
