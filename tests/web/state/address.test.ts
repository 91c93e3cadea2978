import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAddress, writeAddress } from '../../../web/state/address.ts';
import { LEVELS } from '../../../analysis/tree/levels.ts';
import { CONDITIONS, ROOTSTOCKS } from '../../../analysis/tree/penalties.ts';
import { AT_LEAST_MAX, CORNERS_MAX, MAP_SHOWS, PINS_MAX, type Chosen } from '../../../web/state/chosen.ts';

const id = fc.stringMatching(/^[\w.-]{1,20}$/);
const elevationM = fc.integer({ min: -430, max: 8849 });
const degrees = (most: number) =>
  fc.integer({ min: -most * 10_000, max: most * 10_000 }).map((v) => v / 10_000);
const place = fc.oneof(
  fc.record({ by: fc.constant('station' as const), id }),
  fc.record(
    { by: fc.constant('postcode' as const), code: fc.stringMatching(/^[A-Z]{2} \d{3}$/), elevationM },
    { requiredKeys: ['by', 'code'] },
  ),
  fc.record(
    { by: fc.constant('point' as const), lat: degrees(90), lon: degrees(180), elevationM },
    { requiredKeys: ['by', 'lat', 'lon'] },
  ),
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
    language: fc.constantFrom('en' as const, 'es' as const),
    pins: fc.array(place, { minLength: 1, maxLength: PINS_MAX }),
    area: fc.array(fc.record({ lat: degrees(90), lon: degrees(180) }), {
      minLength: 3,
      maxLength: CORNERS_MAX,
    }),
    mapWinters: fc.constantFrom('all' as const, 'last30' as const),
    mapShows: fc.constantFrom(...MAP_SHOWS),
    against: id,
    atLeast: fc.integer({ min: 2, max: AT_LEAST_MAX }),
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

  it('tells pins and an area in few signs', () => {
    const pins = [
      { by: 'point' as const, lat: 31.2, lon: -42.05, elevationM: 120 },
      { by: 'postcode' as const, code: 'SC 101' },
      { by: 'station' as const, id: 'ZZ1' },
    ];
    const area = [
      { lat: 31.2, lon: -42.1 },
      { lat: 31.2, lon: -42 },
      { lat: 31.25, lon: -42.05 },
    ];
    expect(writeAddress({ pins, area })).toBe(
      '?pin=at:31.2,-42.05,120&pin=postcode:SC+101&pin=station:ZZ1&area=31.2,-42.1_0,rs_dw,-dw',
    );
  });

  it('says what is wrong with pins, areas and heights', () => {
    const five = Array.from({ length: 5 }, (_, i) => `pin=station:S${i}`).join('&');
    expect(readAddress(`?${five}`).chosen.pins).toHaveLength(PINS_MAX);
    expect(readAddress(`?${five}`).ignored[0]).toMatch(/pinned 5 places; the first 4/);
    for (const bad of [
      'at=31,-42,9999',
      'postcode=SC 1,-900',
      'pin=moon:1',
      'pin=at:95,1',
      'area=31,-42_1,1',
    ]) {
      const { chosen: left, ignored } = readAddress(`?${bad}`);
      expect([left, ignored.length], bad).toEqual([{}, 1]);
    }
    expect(readAddress('?area=89.9,0_zz,0_0,1').chosen).toEqual({});
  });

  it('never throws, whatever the text', () => {
    fc.assert(fc.property(fc.string(), (text) => void readAddress(text)));
  });
});
