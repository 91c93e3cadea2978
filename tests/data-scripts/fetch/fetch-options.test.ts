import { describe, expect, it } from 'vitest';

import { InputError } from '../../../analysis/records/input-error.ts';
import { fetchArchive, type FetchEvent } from '../../../data-scripts/fetch/fetch-archive.ts';
import { checkOptions } from '../../../data-scripts/fetch/fetch-options.ts';

describe('options of a fetch are refused before anything is asked', () => {
  it.each([
    [{ near: { lat: 95, lon: 0 } }, 'the latitude of --near is 95, but must be from -90 to 90'],
    [{ near: { lat: 0, lon: NaN } }, 'the longitude of --near is NaN'],
    [{ km: 0 }, '--km is 0, but must be above 0 and at most 2000'],
    [{ most: 2.5 }, '--most is 2.5, but must be a whole number from 1 to 500'],
    [{ minYears: 0 }, '--min-years is 0'],
    [{ archive: 'ftp://x/' }, '--archive is "ftp://x/"'],
    [{ archive: 'nonsense' }, '--archive is "nonsense"'],
  ])('%j', (more, sentence) => {
    const options = { near: { lat: 31, lon: -42 }, km: 60, out: 'never-made', ...more };
    expect(() => checkOptions(options)).toThrow(InputError);
    expect(() => checkOptions(options)).toThrow(sentence);
  });

  it.each([
    [{ km: 0 }, '--km is 0'],
    [{ out: '/dev/null/x' }, "The folder /dev/null/x can't be made (ENOTDIR)"],
  ])('and the archive is left alone: %j', async (more, sentence) => {
    const events: FetchEvent[] = [];
    // Nothing listens there: a request would end otherwise.
    const options = {
      near: { lat: 31, lon: -42 },
      km: 60,
      out: 'never-made',
      archive: 'http://127.0.0.1:9/',
    };
    await expect(fetchArchive({ ...options, ...more }, (event) => events.push(event))).rejects.toThrow(
      sentence,
    );
    expect(events).toEqual([]);
  });
});
