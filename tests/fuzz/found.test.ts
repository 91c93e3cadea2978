import { describe, expect, it } from 'vitest';

import { parseInventoryLine } from '../../analysis/archive/list-lines.ts';
import { parseColumnMap } from '../../analysis/read/column-map.ts';
import { DateFields } from '../../analysis/read/dates.ts';
import { numberAt } from '../../analysis/read/fields.ts';
import { checkPackManifest, checkPlaces } from '../../analysis/records/check-pack.ts';
import { InputError } from '../../analysis/records/input-error.ts';
import { NIGHT_KINDS, SUSTAINED_HOURS } from '../../analysis/records/nights.ts';
import { decodeWinterTile, encodeWinterTile } from '../../analysis/records/winter-tile.ts';
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
  it('years of an inventory are whole years', () => {
    const years = (text: string) => parseInventoryLine(`ZZ000000001  31.0000  -42.0000 TMIN ${text}`);
    expect(years('1950 2024')).toMatchObject({ first: 1950, last: 2024 });
    for (const text of ['24.5 99.9', '1950 2e3 ', '0x10 0x20', ' -1  2024'])
      expect(years(text)).toBeUndefined();
  });
  it('no turned bit of a winters tile fills the memory or throws anything but a sentence', () => {
    const cold = NIGHT_KINDS.map(() => SUSTAINED_HOURS.map((_, at) => Int16Array.of(-300 + at, 5 + at)));
    const tile = encodeWinterTile(
      new Map([
        [
          'ZZ1',
          {
            winter: Int16Array.of(2001, 2002),
            complete: Uint8Array.of(1, 0),
            reason: ['', 'gaps'],
            coldest: cold,
            coldestDay: cold.map((levels) => levels.map((level) => Int32Array.from(level))),
          },
        ],
      ]),
    );
    expect(decodeWinterTile(tile).size).toBe(1);
    let refused = 0;
    for (const by of [0x80, 0x0f])
      tile.forEach((byte, at) => {
        tile[at] = byte ^ by;
        try {
          decodeWinterTile(tile);
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
          refused++;
        }
        tile[at] = byte;
      });
    expect(refused).toBeGreaterThan(tile.length / 10);
  }, 60_000);
});
