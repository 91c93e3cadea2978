import { describe, expect, it } from 'vitest';

import { parseColumnMap } from '../../analysis/read/column-map.ts';
import { DateFields } from '../../analysis/read/dates.ts';
import { numberAt } from '../../analysis/read/fields.ts';
import { checkPackManifest, checkPlaces } from '../../analysis/records/check-pack.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { bindNamed } from '../../web/engine/bind-named.ts';
import { readCustomers } from '../../web/views/desk/counter/customers.ts';

describe('what the properties found', () => {
  it.each(['2001-01-015', '200101021', '2001-01-01x', '01/02/2001!', '20010102123456789'])(
    '%s is no date',
    (text) => {
      expect(new DateFields().read(text, 0, text.length)).toBeNaN();
    },
  );
  it.each(['2001-01-02', '20010102', '2001010207', '2001-1-2 07:00', '2001-01-02T07:00:00Z'])(
    '%s is one',
    (text) => {
      expect(new DateFields().read(text, 0, text.length)).toBe(Date.UTC(2001, 0, 2) / 864e5);
    },
  );
  it('numbers too large to be one are none', () => {
    for (const text of ['1e999', '9'.repeat(400)]) expect(numberAt(text, 0, text.length)).toBeNaN();
  });
  it('a message is one line of bounded length, whatever it quotes', () => {
    expect(new InputError('a\r\nb').message).toBe('a b');
    expect(new InputError('x'.repeat(5000)).message.length).toBeLessThan(700);
  });
  it.each([
    { missing: [null] },
    { signature: { header: 3 } },
    { skipLines: 1e308 },
    { station: { lat: 'north' } },
  ])('a column map with %j is refused', (part) => {
    const map = { kind: 'daily', columns: { date: 'd', tmin: 't' }, ...part };
    expect(() => parseColumnMap(JSON.stringify(map), 'map.json')).toThrow(InputError);
  });
  it('a pack without winters, or a place without a name, is refused', () => {
    const manifest = {
      schema: 1,
      id: 'a',
      title: 'A',
      bbox: [0, 0, 1, 1],
      winters: null,
      files: [],
      sources: [],
    };
    expect(() => checkPackManifest(manifest, 'pack.json')).toThrow(
      'pack.json: field "winters" is not as it should be.',
    );
    expect(() => checkPlaces({ towns: [{ lat: 1, lon: 1, rank: 1 }] }, 'p.json')).toThrow(
      'entry 1 of "towns"',
    );
  });
  it('a name that every object has is no parameter', () => {
    expect(() => bindNamed('select $constructor', {})).toThrow(InputError);
  });
  it('a customer kept twice is told once', () => {
    const one = {
      id: 'a',
      at: 1,
      packId: 'p',
      place: 'at:1,1',
      placeLabel: 'x',
      answers: null,
      label: '',
      typeIds: [],
    };
    const storage = { getItem: () => JSON.stringify([one, one]), setItem: () => {}, removeItem: () => {} };
    expect(readCustomers(storage)).toHaveLength(1);
  });
});
