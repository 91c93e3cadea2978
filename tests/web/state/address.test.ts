import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAddress, writeAddress } from '../../../web/state/address.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { CONDITIONS, ROOTSTOCKS } from '../../../analysis/tree/penalties.ts';
import type { Chosen } from '../../../web/state/chosen.ts';

const id = fc.stringMatching(/^[\w.-]{1,20}$/);
const place = fc.oneof(
  fc.record({ by: fc.constant('station' as const), id }),
  fc.record({ by: fc.constant('postcode' as const), code: fc.stringMatching(/^[A-Z]{2} \d{3}$/) }),
  fc.record({
    by: fc.constant('point' as const),
    lat: fc.integer({ min: -900_000, max: 900_000 }).map((v) => v / 10_000),
    lon: fc.integer({ min: -1_800_000, max: 1_800_000 }).map((v) => v / 10_000),
  }),
);
const chosen: fc.Arbitrary<Chosen> = fc.record(
  {
    pack: id,
    place,
    ageYears: fc.integer({ min: 1, max: 100 }),
    condition: fc.constantFrom(...CONDITIONS),
    fruitLoad: fc.boolean(),
    container: fc.boolean(),
    notHardened: fc.boolean(),
    rootstock: fc.constantFrom(...ROOTSTOCKS),
    level: fc.constantFrom(...LEVELS),
    years: fc.integer({ min: 1, max: 60 }),
    type: id,
    showRootstocks: fc.boolean(),
    unit: fc.constantFrom('F' as const, 'C' as const),
  },
  { requiredKeys: [] },
);

describe('the address', () => {
  it('gives back every set of choices unchanged', () => {
    fc.assert(
      fc.property(chosen, (choices) => {
        const plain = JSON.parse(JSON.stringify(choices, (_, v) => (Object.is(v, -0) ? 0 : v)));
        expect(readAddress(writeAddress(choices))).toEqual({ chosen: plain, ignored: [] });
      }),
    );
  });

  it('holds nothing while nothing was chosen', () => {
    expect(writeAddress({})).toBe('');
    expect(readAddress('')).toEqual({ chosen: {}, ignored: [] });
  });

  it('leaves out what makes no sense and says which', () => {
    const reading = readAddress('?age=-3&level=root&unit=K&condition=weak&at=95,10&years=10.5');
    expect(reading.chosen).toEqual({ condition: 'weak' });
    expect(reading.ignored).toHaveLength(5);
    expect(reading.ignored.join(' ')).toMatch(/age “-3”/);
    expect(reading.ignored.join(' ')).toMatch(/at “95,10”/);
  });

  it('passes over keys of others in silence', () => {
    expect(readAddress('?utm_source=letter&level=leaf')).toEqual({ chosen: { level: 'leaf' }, ignored: [] });
  });

  it('takes one place only', () => {
    const reading = readAddress('?station=A1&postcode=SC%20101');
    expect(reading.chosen.place).toEqual({ by: 'station', id: 'A1' });
    expect(reading.ignored[0]).toMatch(/more than one place/);
  });

  it('never throws, whatever the text', () => {
    fc.assert(fc.property(fc.string(), (text) => void readAddress(text)));
  });
});
