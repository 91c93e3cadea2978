import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { matchType } from '../../../analysis/tree/match-type.ts';
import spellings from '../../../analysis/tree/type-spellings.json';

const idOf = (text: string): string | null => matchType(text).type?.id ?? null;

/** Marks that cut, quote or hide, and letters of names. */
const NASTY = fc.constantFrom(...'",;\t\n\r\0\ufeff\u00a0=+-@ 0123.eimnoruyzñÁ\u0301\ud83d'.split(''));

describe('a name in a nursery’s list', () => {
  test('ids and the catalogue’s own names mean their types', () => {
    for (const { id, name } of CITRUS_TYPES) expect([idOf(id), idOf(name)]).toEqual([id, id]);
  });

  test('every spelling means its own type, unless it is one of several’s', () => {
    const shared = new Set(['pomelo', 'kumquat', 'quinoto']);
    for (const [id, own] of Object.entries(spellings))
      for (const spelling of own)
        expect([spelling, idOf(spelling)]).toEqual([spelling, shared.has(spelling) ? null : id]);
  });

  test.each([
    ['LEMON, MEYER (improved) 3 gal.', 'meyer_lemon'],
    ['Árbol de Limón Meyer', 'meyer_lemon'],
    ['Kaffir lime', 'makrut_lime'],
    ['Cara Cara', 'navel_orange'],
    ['Naranjo Navelina', 'navel_orange'],
    ['Satsuma Brown Select grafted', 'satsuma_early'],
    ['satsuma', 'satsuma_owari'],
    ['NARANJO AMARGO', 'sour_orange'],
    ['Rio Red Grapefruit', 'grapefruit'],
    ['lima Tahiti sin semilla', 'tahiti_lime'],
    ['Kumquat, Meiwa', 'kumquat_meiwa'],
  ])('%s is %s', (text, id) => expect(idOf(text)).toBe(id));

  test('what could be several says which, what is none says nothing', () => {
    const near = (text: string): string[] => {
      const match = matchType(text);
      return match.type ? [] : match.near.map(({ id }) => id);
    };
    expect(near('pomelo')).toEqual(['pummelo', 'grapefruit']);
    expect(near('Kumquat')).toEqual(['kumquat_nagami', 'kumquat_meiwa']);
    expect(near('lemon')).toContain('eureka_lemon');
    expect(near('apple')).toEqual([]);
    expect(near('')).toEqual([]);
  });

  test('any text at all is answered', () => {
    fc.assert(fc.property(fc.string({ unit: NASTY, maxLength: 150 }), (text) => void matchType(text)));
  });
});
