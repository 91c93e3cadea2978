import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { postcodesNear } from '../../../analysis/archive/us-postcodes.ts';
import { distanceKm } from '../../../analysis/place/distance.ts';
import { readPlaces } from '../../../data-scripts/build/read-places.ts';
import { allUsPostcodes } from '../../../data-scripts/build/us-postcodes.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'citrus-winters-places-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const BOX = [-10, 35, 5, 44] as const;
async function read(name: string, content: string | Uint8Array) {
  const file = path.join(folder, name);
  await writeFile(file, content);
  return readPlaces(file, BOX);
}

/** Lines as the readme of GeoNames' postal files lays them out; the codes are invented, with letters and a blank among them. */
const GEONAMES = [
  ['ZZ', '01 A', 'Uferstadt', 'Nord', 'N', 'Kreis', '7', 'Amt', '71', '40.5', '-3.25', '4'],
  ['ZZ', '02', 'Jenseits', 'Süd', 'S', '', '', '', '', '-33.9', '18.4', '6'],
  ['ZZ', '03', 'São Brás', '', '', '', '', '', '', '37.15', '-7.89', ''],
]
  .map((cells) => cells.join('\t'))
  .join('\n');

describe("a postal file in GeoNames' layout", () => {
  const inside = {
    postcodes: [
      { code: '01 A', name: 'Uferstadt', lat: 40.5, lon: -3.25 },
      { code: '03', name: 'São Brás', lat: 37.15, lon: -7.89 },
    ],
    towns: [],
  };

  it('gives code, name and place of the rows inside the box, gzipped or not, with either line end', async () => {
    expect(await read('ZZ.txt', GEONAMES)).toEqual(inside);
    expect(await read('ZZ2.txt', `${GEONAMES.replaceAll('\n', '\r\n')}\r\n`)).toEqual(inside);
    expect(await read('ZZ.txt.gz', gzipSync(GEONAMES))).toEqual(inside);
  });

  it.each([
    [
      'short',
      'ZZ\t04\tOrt\t40.5\t-3.25',
      /short\.txt, line 1: 5 columns, but GeoNames' postal layout has 11 or 12/,
    ],
    [
      'latitude',
      GEONAMES.replace('37.15', '97.15'),
      /latitude\.txt, line 3: latitude "97\.15" is outside -90 to 90/,
    ],
    [
      'longitude',
      GEONAMES.replace('-3.25', 'west'),
      /longitude\.txt, line 1: longitude "west" is outside -180 to 180/,
    ],
    ['code', GEONAMES.replace('\t02\t', '\t\t'), /code\.txt, line 2: the postcode is empty/],
    ['cut', gzipSync(GEONAMES).subarray(0, 60), /cut\.txt is cut off or damaged/],
  ])('with a fault in its %s is refused with file and line', async (name, content, sentence) => {
    await expect(read(`${name}.txt`, content)).rejects.toThrow(sentence);
  });
});

describe('ZIP codes', () => {
  const newOrleans = { lat: 29.95, lon: -90.07 };
  const codes = postcodesNear(allUsPostcodes(), [newOrleans]);

  it('are those within 150 km of a station, each once, in order', () => {
    expect(codes.length).toBeGreaterThan(150);
    expect(new Set(codes.map(({ code }) => code)).size).toBe(codes.length);
    expect(codes.map(({ code }) => code)).toEqual(codes.map(({ code }) => code).sort());
    for (const { code, lat, lon } of codes) {
      expect(code).toMatch(/^\d{5}$/);
      expect(distanceKm({ lat, lon }, newOrleans)).toBeLessThan(150.5);
    }
  });

  it('stand where the Census Bureau puts them', () => {
    // Gazetteer of ZIP code tabulation areas, 2021: middles of areas.
    for (const [wanted, lat, lon] of [
      ['70119', 29.975752, -90.087845],
      ['70130', 29.936406, -90.069932],
    ] as const) {
      const found = codes.find(({ code }) => code === wanted)!;
      expect(found.name).toBe('New Orleans, LA');
      expect(distanceKm(found, { lat, lon })).toBeLessThan(0.01);
    }
  });

  it('are none far from the United States', () => {
    expect(
      postcodesNear(allUsPostcodes(), [
        { lat: 40.4, lon: -3.7 },
        { lat: 31, lon: -42 },
      ]),
    ).toEqual([]);
  });
});
