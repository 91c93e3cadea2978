import { describe, expect, it } from 'vitest';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { shortTypeName, withArticle } from '../../../web/format/type-names.ts';

describe('names of types in a sentence', () => {
  it('leave out what stands in brackets', () => {
    expect(shortTypeName('Grapefruit (Marsh, Duncan, Ruby types)')).toBe('Grapefruit');
  });

  it('stand after the article they are spoken with', () => {
    const spoken = CITRUS_TYPES.map(({ name }) => withArticle(shortTypeName(name)));
    expect(spoken).toEqual(
      expect.arrayContaining([
        'an Orangequat',
        'an Ichang lemon',
        'a Yuzu',
        'a Meyer lemon',
        'a Eureka lemon',
      ]),
    );
    expect(spoken.filter((words) => /^a [AIO]|^an [^AEIO]/.test(words))).toEqual([]);
  });
});
