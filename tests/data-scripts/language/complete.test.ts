import { describe, expect, it } from 'vitest';

import { LANGUAGES, readCatalogue } from '../../../data-scripts/language/catalogue.ts';
import { catalogueFaults } from '../../../data-scripts/language/check-catalogue.ts';
import { rawTexts } from '../../../data-scripts/language/raw-texts.ts';
import { findPhrases } from '../../../data-scripts/language/source-phrases.ts';

describe('every language', () => {
  it('has all that is said, with the same values, once, and nothing else', () => {
    const said = findPhrases('.');
    for (const language of LANGUAGES)
      expect(catalogueFaults(readCatalogue('.', language), said, () => true)).toEqual([]);
  });

  it('can be spoken: no component shows a text of its own', () => {
    expect(rawTexts('.', [], 'markup')).toEqual([]);
  });
});
