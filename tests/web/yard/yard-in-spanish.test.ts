import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { forgetSpanish, inSpanish } from '../../in-spanish.ts';

/** Words that no Spanish sentence of a yard has. */
const ENGLISH = /\b(?:the|of|and|from|wall|winter|behind|ground|house|deep|high|long|by|is|nights?)\b/i;
/** A length in metres, but no area. */
const METRES = /\d m\b/;

/** What says something holds its words from when it is loaded: it is loaded once the language is chosen. */
async function load() {
  const [best, ready, check, lengths, words, spot] = await Promise.all([
    import('../../../analysis/spot/best-spots.ts'),
    import('../../../analysis/spot/ready-yards.ts'),
    import('../../../analysis/spot/check-yard.ts'),
    import('../../../web/yard/lengths.ts'),
    import('../../../web/views/spot/yard-words.ts'),
    import('../../../analysis/spot/coefficients.ts'),
  ]);
  return { ...best, ...ready, ...check, ...lengths, ...words, ...spot };
}

describe('a yard in Spanish', () => {
  let said: Awaited<ReturnType<typeof load>>;
  beforeAll(async () => {
    said = await inSpanish(load);
  });
  afterAll(forgetSpanish);

  it('tells its best spots without an English word, in metres and in feet', () => {
    for (const { yard } of said.READY_YARDS) {
      const best = said.bestSpots(yard, 31);
      expect(best.length).toBeGreaterThan(0);
      for (const { why } of best) {
        expect(why).not.toMatch(ENGLISH);
        expect(why).toMatch(/\d,\d horas de sol de invierno al día/);
        const inFeet = said.inLengthUnit(why, 'ft');
        expect(inFeet).not.toMatch(METRES);
        expect(said.inLengthUnit(why, 'm')).toBe(why);
      }
    }
  });

  it('tells what is wrong with it, its limits with a decimal comma', () => {
    const [town] = said.READY_YARDS;
    const things = [
      {
        id: 'wall-2',
        kind: 'wall' as const,
        line: [[1.5, 2] as const, [99, 2] as const],
        heightM: 2.5,
        masonry: true,
        open: false,
      },
      { id: 'rise-1', kind: 'rise' as const, at: [3, 3] as const, byM: 0.01, radiusM: 5 },
    ];
    const sentences = said.yardProblems({ ...town!.yard, things }).map(({ sentence }) => sentence);
    expect(sentences).toHaveLength(2);
    expect(sentences[0]).toMatch(
      /^El muro 2 sale del terreno, hasta 99 m al este y 2 m al norte; el terreno es de \d+ por \d+ m\.$/,
    );
    expect(sentences[1]).toMatch(
      /^El punto alto 1 tiene una altura de 0,01 m; hace falta \d,\d+ m como mínimo\.$/,
    );
    expect(said.inLengthUnit(sentences[0]!, 'ft')).not.toMatch(METRES);
  });

  it('lists its things by names and sizes', () => {
    for (const { yard } of said.READY_YARDS)
      for (const thing of yard.things)
        expect(`${said.listedName(thing)}: ${said.sizeWords(thing, 'm')}`).not.toMatch(ENGLISH);
    expect(said.inLengthUnit('Sobre suelo desnudo de 9 metros cuadrados; baja 5 m en 100 m', 'ft')).toBe(
      'Sobre suelo desnudo de 97 pies cuadrados; baja 5 en 100',
    );
  });

  it('has every cause named, with its figures as the English has them', () => {
    for (const { name, fullEffect } of Object.values(said.TABLE_COEFFICIENTS)) {
      expect(`${name}: ${fullEffect}`).not.toMatch(ENGLISH);
      expect(said.inLengthUnit(fullEffect, 'ft')).not.toMatch(METRES);
    }
  });
});
