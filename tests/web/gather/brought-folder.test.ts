import { expect, it } from 'vitest';
import { chosenFiles, packAmong } from '../../../web/gather/brought-folder.ts';
import { isOwnPack } from '../../../web/gather/own-pack-id.ts';
import { sha256Of } from '../../../web/kept/sha256.ts';
import { placeTyped } from '../../../web/views/records/own/place-typed.ts';

const file = (name: string): File => new File(['x'], name);

it('finds the topmost pack among the files brought', () => {
  const at = (...paths: string[]) => packAmong(paths.map((path) => ({ path, file: file('x') })));
  expect(at('a/pack.json', 'a/old/pack.json', 'a/stations.json')).toBe('a/');
  expect(at('pack.json')).toBe('');
  expect(at('a/backpack.json', 'b.csv')).toBeNull();
});

it('leaves hidden files out', () => {
  expect(chosenFiles([file('.DS_Store'), file('a.csv')]).map(({ path }) => path)).toEqual(['a.csv']);
});

// FIPS 180-2, appendix B.1.
it('makes the checksum of "abc" as the standard prints it', async () => {
  expect(await sha256Of(new Blob(['abc']))).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  );
});

it('reads a place as people type it, and says what is wrong', () => {
  const typed = { name: ' A ', lat: '31,5', lon: '\u221242.1', height: '' };
  expect(placeTyped('Z', typed)).toEqual({
    station: { id: 'Z', name: 'A', lat: 31.5, lon: -42.1, elevationM: null },
  });
  for (const [field, value] of [
    ['lat', '91'],
    ['lat', ''],
    ['lon', 'east'],
    ['height', '10000'],
  ])
    expect(placeTyped('Z', { ...typed, [field]: value })).toMatchObject({
      problem: expect.stringContaining(`“${value}”`),
    });
});

it('knows packs that no server has by their id', () => {
  expect([isOwnPack('own-12ab'), isOwnPack('sallowmere')]).toEqual([true, false]);
});
