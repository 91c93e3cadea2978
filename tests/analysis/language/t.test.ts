import { afterEach, describe, expect, it } from 'vitest';
import { said, speak, t } from '../../../analysis/language/t.ts';

describe('what is said', () => {
  afterEach(() => speak(null));

  it('is English as written until another language is chosen', () => {
    expect(t`About ${3} of ${'ten'}.`).toBe('About 3 of ten.');
    expect(t`No value`).toBe('No value');
    expect(said('Meyer lemon')).toBe('Meyer lemon');
  });

  it('takes the phrase of the language chosen, its values in that phrase’s own order', () => {
    speak(new Map([['{0} of {1} winters', 'de {1} inviernos, {0}']]));
    expect(t`${2} of ${60} winters`).toBe('de 60 inviernos, 2');
    speak(new Map([['Meyer lemon', 'limón Meyer']]));
    expect(said('Meyer lemon')).toBe('limón Meyer');
  });

  it('keeps to English where the catalogue lacks a phrase, and puts values in untouched', () => {
    speak(new Map([['Kept: {0}', 'Guardado: {0}']]));
    expect(t`Lost: ${'{0} $& {1}'}`).toBe('Lost: {0} $& {1}');
    expect(t`Kept: ${'$& {0}'}`).toBe('Guardado: $& {0}');
  });
});
