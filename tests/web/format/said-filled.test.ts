import { afterEach, describe, expect, it } from 'vitest';

import { speak } from '../../../analysis/language/t.ts';
import { saidFilled } from '../../../web/format/said-filled.ts';

describe('a text kept in English', () => {
  afterEach(() => speak(null));

  it('is said by the phrase it was made from, its values too', () => {
    speak(
      new Map([
        ['{0} days were written more than once.', 'Se escribieron {0} días más de una vez.'],
        ['Station {0}: {1}', 'Estación {0}: {1}'],
        ['{0} of {1} (file {2}?)', 'de {1}, {0} (¿archivo {2}?)'],
        ['spike', 'pico'],
      ]),
      'es',
    );
    expect(saidFilled('Station ZZ1: 12 days were written more than once.')).toBe(
      'Estación ZZ1: Se escribieron 12 días más de una vez.',
    );
    expect(saidFilled('spike')).toBe('pico');
    expect(saidFilled('nothing of the kind')).toBe('nothing of the kind');
  });

  it('takes the phrase that says most, and none that fits nearly everything', () => {
    speak(
      new Map([
        ['{0} to {1}', '{0} a {1}'],
        ['{0} winters in all', '{0} inviernos en total'],
        ['only {0} winters in all', 'solo {0} inviernos en total'],
      ]),
      'es',
    );
    expect(saidFilled('only 3 winters in all')).toBe('solo 3 inviernos en total');
    expect(saidFilled('from here to there')).toBe('from here to there');
  });

  it('stays as it is in English', () => {
    expect(saidFilled('Station ZZ1: 12 days.')).toBe('Station ZZ1: 12 days.');
  });
});
