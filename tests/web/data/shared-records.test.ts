import { describe, expect, it } from 'vitest';
import { shareRecords } from '../../../web/data/shared-records.ts';
import type { RecordsPort } from '../../../web/state/ports.ts';

const NOBODY = { nightsSource: () => Promise.reject(new Error('not asked')) };

describe('one database for all parts of the page', () => {
  it('is made once a pack and closed with the last part', () => {
    const log: string[] = [];
    const make = (url: string): RecordsPort => {
      log.push(`made ${url}`);
      const no = (): Promise<never> => Promise.reject(new Error('not asked'));
      return {
        open: no,
        hitNights: no,
        keptNights: no,
        run: no,
        close: () => void log.push(`closed ${url}`),
      };
    };
    const [first, second, other] = ['a/', 'a/', 'b/'].map((url) => shareRecords(url, NOBODY, make));
    expect(log).toEqual(['made a/', 'made b/']);
    first!.close();
    first!.close();
    expect(log).toEqual(['made a/', 'made b/']);
    second!.close();
    other!.close();
    shareRecords('a/', NOBODY, make).close();
    expect(log.slice(2)).toEqual(['closed a/', 'closed b/', 'made a/', 'closed a/']);
  });
});
