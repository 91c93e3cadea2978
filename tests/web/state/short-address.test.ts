import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { readAddress } from '../../../web/state/address.ts';
import { foldQuery, unfoldAddress, unfoldQuery } from '../../../web/state/short-address.ts';

describe('a folded query', () => {
  it('unfolds to what it was, whatever that was', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 300 }), async (text) => {
        const search = `?${text.replace(/^\?/, '')}`;
        const folded = await foldQuery(search);
        expect(folded).toMatch(/^\?s=[\w-]*$/);
        expect(await unfoldQuery(folded)).toBe(search);
      }),
      { numRuns: 40 },
    );
  });

  it('leaves a plain query as it is', async () => {
    expect(await unfoldQuery('?level=leaf')).toBe('?level=leaf');
    expect(await unfoldQuery('')).toBe('');
  });

  it('that makes no sense is left, and the page says so', async () => {
    for (const bad of ['?s=', '?s=%00', '?s=abc', '?s=!!!!', '?s=_____w']) {
      expect(await unfoldQuery(bad), bad).toBe(bad);
      expect(readAddress(bad).ignored, bad).toHaveLength(1);
    }
  });

  it('does not swell without end', async () => {
    const bomb = await foldQuery(`?yard=${'a'.repeat(5_000_000)}`);
    expect(bomb.length).toBeLessThan(10_000);
    expect(await unfoldQuery(bomb)).toBe(bomb);
  });

  it('is put plain into the address, which keeps its path and part', async () => {
    const search = await foldQuery('?level=leaf&age=3');
    let url = '';
    const history = { replaceState: (_: unknown, __: string, to: string) => (url = to) };
    const location = { search, pathname: '/page/', hash: '#sheet' };
    await unfoldAddress({ location, history } as never);
    expect(url).toBe('/page/?level=leaf&age=3#sheet');
  });
});
