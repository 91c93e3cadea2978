import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Offer } from '../../../../analysis/answer/choose-offer.ts';
import type { Way } from '../../../../analysis/answer/choosing.ts';
import { forgetSpanish, inSpanish } from '../../../in-spanish.ts';

/** Words that no Spanish sentence of choosing has. */
const ENGLISH = /\b(?:the|of|and|from|by|in|nights?|winters?|is|are|with|would|fruit|crops?|trees?|cover)\b/i;

/** What says something holds its words from when it is loaded: it is loaded once the language is chosen. */
async function load() {
  const [choose, harvest, made, words, rules, wishes] = await Promise.all([
    import('../../../../analysis/answer/choose.ts'),
    import('../../../../analysis/tree/harvest.ts'),
    import('../../../analysis/answer/made-offers.ts'),
    import('../../../../web/views/choose/choose-words.ts'),
    import('../../../../web/views/choose/choosing-rules.ts'),
    import('../../../../web/views/choose/wishes-text.ts'),
  ]);
  return { ...choose, ...harvest, ...made, ...words, ...rules, ...wishes };
}

describe('which to plant in Spanish', () => {
  let said: Awaited<ReturnType<typeof load>>;
  beforeAll(async () => {
    said = await inSpanish(load);
  });
  afterAll(forgetSpanish);

  it('tells what meets the wishes, nearly does or does not, and pairs', () => {
    const types = said.typesOf('satsuma_owari', 'meyer_lemon', 'navel_orange', 'kumquat_nagami');
    const changes: Record<string, (way: Way) => Partial<Offer>> = {
      satsuma_owari: () => ({ livingInTenLow: 7.5, cropsByWinter: Uint8Array.of(1, 0, 0, 0) }),
      // Needs more than a spot or a cover alone.
      meyer_lemon: ({ spotId, covers }) => ({
        livingInTen: spotId !== null && covers.length > 0 ? 8.2 : 7.2,
      }),
      navel_orange: () => ({ livingInTen: 3 }),
      kumquat_nagami: ({ covers }) => ({
        ...{ livingInTen: covers.includes('tied') ? 9.4 : 6, nightsToCover: 2.5 },
        cropsByWinter: Uint8Array.of(0, 1, 1, 0),
      }),
    };
    const chosen = said.choose(said.asking(types), (type, way) =>
      said.offer({ harvest: said.harvestWindow(type, 'gulf', 'north'), ...changes[type.id](way) }),
    );
    expect(said.chosenSentence(chosen, 'Sallowmere')).toBe(
      'De 4 tipos, 2 cumplen en Sallowmere todo lo deseado y 1 casi lo cumple.',
    );
    const rules = chosen.meet.flatMap(({ wishes }) => wishes.map(({ rule }) => rule));
    expect(rules).toContain(
      'De adulto habría que cubrirlo 2,5 noches por invierno; se acepta cubrir 5 noches.',
    );
    expect(rules).toContain(
      '9 de cada diez árboles habrían vivido diez años; se piden 8. Podrían ser tan pocos como 7,5.',
    );
    expect(chosen.pairs).toHaveLength(1);
    expect(chosen.nearly[0].closing).not.toBeNull();
    const told = [
      ...rules,
      ...[...chosen.meet, ...chosen.nearly].flatMap(({ closing, way }) => [
        said.waySentence(way, []),
        ...(closing ? [closing.words, said.useWords(closing.way)] : []),
      ]),
      ...chosen.not.map(({ rule }) => rule),
      ...chosen.pairs.flatMap(({ harvest, rule }) => [harvest, rule]),
      ...said.spotCautions(chosen),
      ...said.choosingRules('C').flatMap(({ title, words }) => [title, words]),
    ];
    expect(told.filter((sentence) => ENGLISH.test(sentence))).toEqual([]);
  });

  it('says what is wrong with the wishes of a link', () => {
    expect(said.readWishesText('much').problem).toMatch(
      /^Los deseos del enlace «much» no son de los nuestros/,
    );
  });
});
